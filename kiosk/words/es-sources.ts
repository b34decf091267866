/**
 * Spanish of where the figures that ship were read. Titles that have no Spanish edition keep their name beside what kind of
 * paper they are; longer phrases stand before those they hold.
 */
const PHRASES: readonly (readonly [string, string])[] = [
  ['Packet named by its gross mass', 'El sobre lleva el nombre de su masa bruta'],
  [
    'Goat anthelmintic chart, July 2006 (Univ. Georgia, Univ. Kentucky), read in a copy',
    'Tabla de antiparasitarios para cabras, julio de 2006 (Univ. Georgia, Univ. Kentucky), leída en copia',
  ],
  [
    'Consortium sheep chart, read in a reprint (undated)',
    'Tabla del consorcio para ovejas, leída en reimpresión (sin fecha)',
  ],
  [
    'Small-ruminant extension page on dewormer safety (undated)',
    'Página de extensión sobre seguridad de antiparasitarios en pequeños rumiantes (sin fecha)',
  ],
  ['eCFR text current 2026-04-05', 'texto eCFR vigente el 2026-04-05'],
  ['eCFR text of 2026-04-05', 'texto eCFR del 2026-04-05'],
  ['eCFR text after 2014', 'texto eCFR posterior a 2014'],
  ['text of 2024-03-22', 'texto del 2024-03-22'],
  [
    'Partial molar volumes of comparable hydrochlorides',
    'Volúmenes molares parciales de clorhidratos parecidos',
  ],
  [
    'one packet, one US quart. The packet in hand wins',
    'un sobre, un cuarto de galón. Manda el sobre en mano',
  ],
  [
    'Assay within 0.5 % taken as rectangular; the packet states none',
    'Pureza dentro del 0.5 %, tomada como rectangular; el sobre no la dice',
  ],
  [
    'Labelled strength taken as right within 5 %, rectangular; the label states no tolerance',
    'Concentración de la etiqueta tomada por buena dentro del 5 %, rectangular; la etiqueta no da tolerancia',
  ],
  [
    'Labelled mass taken as right within 5 %, rectangular; the label states no tolerance',
    'Masa de la etiqueta tomada por buena dentro del 5 %, rectangular; la etiqueta no da tolerancia',
  ],
  [
    'Set by this project, wide on purpose: nothing was read of what this powder adds to its water',
    'Puesto por este proyecto, amplio a propósito: nada se leyó de lo que este polvo suma al agua',
  ],
  ['Set by this project as a guard, 1.5 times the target', 'Límite de este proyecto, 1.5 veces el objetivo'],
  ['Set by this project as a guard', 'Límite de este proyecto'],
  ['no source read gives one', 'sin fuente leída'],
  ['No source read gives one', 'Ninguna fuente leída lo da'],
  [
    'use a jug the day it is mixed unless the packet says otherwise',
    'use la jarra el mismo día, salvo que el sobre diga otra cosa',
  ],
  ['1.5 times the target', '1.5 veces el objetivo'],
  ['first signs in goats at', 'primeros signos en cabras a'],
  ['the label in hand wins', 'manda la etiqueta en mano'],
  ['FDA freedom-of-information summary', 'Resumen público de la FDA'],
  ['FDA product record', 'Ficha de producto de la FDA'],
  ['FDA notice of', 'aviso de la FDA del'],
  [', and a label of ', ', y una etiqueta del '],
  [', and a label', ', y una etiqueta'],
  ['NADA 110-048 supplement', 'suplemento NADA 110-048'],
  ['may be needed again at 2 to 4 weeks', 'puede hacer falta otra vez a las 2 o 4 semanas'],
  ['may be repeated after 4 to 6 weeks', 'puede repetirse a las 4 o 6 semanas'],
  ['No source read. Ask the vet', 'Ninguna fuente leída. Pregunte al veterinario'],
  ['the milk is not for people until a time is given', 'la leche no es para personas hasta tener un plazo'],
  ['the animal is not sold until a time is given', 'el animal no se vende hasta tener un plazo'],
  ['The drench rule itself was not read', 'La norma del oral no se leyó'],
  [
    '21 CFR 530.11 and 530.20, read 2026-06-20 and 2003-01-01',
    '21 CFR 530.11 y 530.20, leídos el 2026-06-20 y el 2003-01-01',
  ],
  ['1996 edition, on severely debilitated animals', 'edición de 1996, sobre animales muy debilitados'],
  [
    'edition of 2019-04-01, and its earlier number 520.45a (undated copy)',
    'edición del 2019-04-01, y su número anterior 520.45a (copia sin fecha)',
  ],
  ['(undated copy)', '(copia sin fecha)'],
  ['no milk tolerance for sheep', 'sin tolerancia en leche de oveja'],
  ['no milk tolerance is set', 'no hay tolerancia fijada en leche'],
  [
    'Study of young goats, AJVR 1990, abstract in a library record',
    'Estudio de cabras jóvenes, AJVR 1990, resumen en un catálogo',
  ],
  [
    'at three times the dose signs began 18 to 63 minutes after it',
    'con tres veces la dosis los signos empezaron de 18 a 63 minutos después',
  ],
  ['parasiticide reference (undated)', 'manual de parasiticidas (sin fecha)'],
  ['Australian case report on sheep, 1981', 'caso clínico australiano en ovejas, 1981'],
  [
    'Report on levamisole poisoning of Angora goats',
    'Informe sobre intoxicación por levamisol en cabras de Angora',
  ],
  ['signs from 5 to 15 minutes', 'signos a los 5 a 15 minutos'],
  [
    'Merck Veterinary Manual, Safety of Anthelmintics, rev. 2014-09',
    'Merck Veterinary Manual, seguridad de antihelmínticos, rev. 2014-09',
  ],
  ['the vet has an antidote for signs', 'el veterinario tiene un antídoto para los signos'],
  ['Common practice, no source', 'Práctica común, sin fuente'],
  [
    'UK datasheet compendium, cattle and sheep drench (undated)',
    'Compendio británico de fichas, oral para vacas y ovejas (sin fecha)',
  ],
  [
    'injury of the throat by the drench nozzle; head level is common practice',
    'heridas de garganta por la boquilla; la cabeza a nivel es práctica común',
  ],
  ['no organophosphate within 14 days', 'ningún organofosforado en 14 días'],
  ['Feed-trade page (undated)', 'Página del comercio de piensos (sin fecha)'],
  [
    'deworming is listed among the causes of thiamine deficiency',
    'desparasitar está entre las causas de falta de tiamina',
  ],
  ['non-lactating goats only', 'solo cabras que no dan leche'],
  ['not for lactating dairy goats', 'no para cabras lecheras que dan leche'],
  [
    'not in the first third of pregnancy, 50 of 150 days',
    'no en el primer tercio de la preñez, 50 de 150 días',
  ],
  ['not for dairy females of breeding age', 'no para hembras lecheras en edad de cría'],
  ['not in ewes giving milk for people', 'no en ovejas que dan leche para personas'],
  [
    'The goat chart of 2006 gives 7 days, but was found wrong on milk elsewhere: ask the vet',
    'La tabla de cabras de 2006 da 7 días, pero erró con la leche en otro sitio: pregunte al veterinario',
  ],
  [
    'The goat chart of 2006 gives 4 days, less than FARAD gives for half the dose: ask the vet',
    'La tabla de cabras de 2006 da 4 días, menos de lo que FARAD da para media dosis: pregunte al veterinario',
  ],
  [
    'The goat chart of 2006 gives 14 days at 0.3 mg/kg; none was read for 0.4: ask the vet',
    'La tabla de cabras de 2006 da 14 días a 0.3 mg/kg; para 0.4 no se leyó ninguno: pregunte al veterinario',
  ],
  ['FARAD goat page (undated)', 'Página de FARAD sobre cabras (sin fecha)'],
  [
    '120 hours at 5 mg/kg; an older chart that says none is unsafe',
    '120 horas a 5 mg/kg; una tabla anterior que dice ninguna no es segura',
  ],
  ['48 hours; older records contradict each other', '48 horas; las fichas anteriores se contradicen'],
  [
    'Not approved for sheep in the US, and no rate for them was read in a source: ask the vet',
    'No autorizado para ovejas en EE. UU., y en ninguna fuente se leyó su dosis: pregunte al veterinario',
  ],
  ['Label, fenbendazole 100 mg/mL, goat', 'Etiqueta, fenbendazol 100 mg/mL, cabra'],
  ['the US label says lambs over 4 months', 'la etiqueta de EE. UU. dice corderos de más de 4 meses'],
  [
    'Farm page of April 2009 quoting the small-ruminant consortium: twice the sheep dose',
    'Página de una finca, abril de 2009, que cita al consorcio de pequeños rumiantes: el doble que a la oveja',
  ],
  [
    'Goat extension page on polioencephalomalacia (goats.extension.org, undated)',
    'Página de extensión sobre polioencefalomalacia en cabras (goats.extension.org, sin fecha)',
  ],
  ['three to four times a day', 'de tres a cuatro veces al día'],
  [
    'A goat extension page gives 0.25 mL for 10 lb without a strength: a fivefold span. Ask the vet',
    'Una página de extensión da 0.25 mL por 10 lb sin concentración: varía cinco veces. Pregunte al veterinario',
  ],
  ['The herd’s veterinarian, entered at Shed', 'El veterinario del rebaño, anotado en Cobertizo'],
  ['No rule for this animal or this volume', 'No hay regla para este animal o este volumen'],
  ['a university extension page', 'una página universitaria de extensión'],
  ['10 to 12 days: ', '10 a 12 días: '],
  ['7 to 14 days: ', '7 a 14 días: '],
  ['10 to 12: ', '10 a 12: '],
  ['up to 17 from memory, no source read', 'hasta 17 de memoria, sin fuente leída'],
  ['(undated)', '(sin fecha)'],
  [', and aviso', ', y aviso'],
  [' days', ' días'],
  ['2 mL of ', '2 mL de '],
  ['3 mL of ', '3 mL de '],
  ['1 mL of ', '1 mL de '],
  [' mg/mL for ', ' mg/mL por '],
  ['1.1 mL for ', '1.1 mL por '],
  ['6 mL for ', '6 mL por '],
  ['1 mL for 11 lb or 5 kg', '1 mL por 11 lb o 5 kg'],
  ['1 mL is 1 mg', '1 mL es 1 mg'],
];

/** Spanish of where a figure that ships was read; what the farm entered stays as it was written. */
export function esSource(text: string): string {
  return PHRASES.reduce((said, [english, spanish]) => said.replaceAll(english, spanish), text);
}
