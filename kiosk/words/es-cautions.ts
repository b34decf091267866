import type { CautionWords, enCautions } from './en-cautions.ts';
import { esReductionTest } from './es-reduction-test.ts';

function say(title: string, detail: string, accept = ''): CautionWords {
  return { title, detail, accept };
}

/** Spanish words for every caution. */
export const esCautions: typeof enCautions = {
  'not-kept': () =>
    say('No se puede anotar', 'La tarjeta no acepta registros: una dosis dada ahora se perdería.'),
  'species-not-covered': () =>
    say('No es para este animal', 'Este medicamento no tiene aquí regla para la especie. No lo dé.'),
  'presentation-not-covered': () =>
    say(
      'No es lo de este frasco',
      'La regla para este animal es para otra presentación del medicamento. No dé esta.',
    ),
  'not-approved': () =>
    say('Regla sin aprobar', 'Nadie en esta finca aprobó esta regla de dosis. Léala primero en Cobertizo.'),
  'jug-past-use-by': (v, show) =>
    say('Esta jarra ya es vieja', `Servía hasta ${show.when(v['useByMs'])}. Mezcle una nueva.`),
  'jug-empty': () => say('Esta jarra está vacía', 'Según el diario no queda nada en ella. Tome otra.'),
  'jug-too-little': (v, show) =>
    say('No queda suficiente', `Según el diario quedan ${show.volume(v['leftMl'])}: menos que esta dosis.`),
  'no-syringe': () =>
    say(
      'Ninguna jeringa lo mide',
      'Agregue en Cobertizo una más fina o más grande, o mezcle otra concentración.',
    ),
  'same-active-today': (v, show) =>
    say(
      'Ya recibió dosis',
      (v['repeatDays'] ?? 1) < 1
        ? `Lo recibió ${show.when(v['lastGivenAtMs'])}. La regla espera ${show.number(24 * (v['repeatDays'] ?? 1), 1)} horas: no antes de ${show.when(v['nextAtMs'])}.`
        : `Lo recibió ${show.when(v['lastGivenAtMs'])}. Nunca dos veces en 24 horas; la regla espera ${show.number(v['repeatDays'])} días.`,
    ),
  'top-up': (v, show) =>
    say(
      'El resto, no más',
      `Recibió una parte ${show.when(v['lastGivenAtMs'])}. Esto es lo que quedó en la jeringa, y esta regla permite darlo.`,
      'no tomó más que esa parte',
    ),
  'unanswered-offer': () =>
    say(
      '¿Se dio la última dosis?',
      'Se mostró una dosis para este animal y nadie respondió. Responda primero.',
    ),
  'repeat-too-soon': (v, show) =>
    say(
      'Recibió dosis hace poco',
      `Recibió este medicamento ${show.day(v['lastGivenAtMs'])}. La regla espera ${show.number(v['repeatDays'])} días.`,
      'darle otra dosis tan pronto',
    ),
  'unknown-medicine-given': (v, show) =>
    say(
      'Medicina no conocida',
      `Dada ${show.when(v['lastGivenAtMs'])}, quizá en otro quiosco. Puede ser el mismo principio: vea el registro.`,
      'es otro principio',
    ),
  'weight-outside-species': (v, show) =>
    say(
      'Peso raro en su especie',
      `${show.weight(v['grams'])} no es peso de esta especie. ¿Está solo en la plataforma?`,
      `${show.weight(v['grams'])} es correcto`,
    ),
  'weight-pounds-for-kilograms': (v, show) =>
    say(
      '¿Libras o kilogramos?',
      `Ahora ${show.weight(v['grams'])}, la última vez ${show.weight(v['lastGrams'])}: difieren como libras y kilogramos.`,
      `${show.weight(v['grams'])} es correcto`,
    ),
  'weight-far-from-last': (v, show) =>
    say(
      'Lejos de su último peso',
      `Ahora ${show.weight(v['grams'])}, la última vez ${show.weight(v['lastGrams'])}. ¿Es el animal correcto?`,
      `${show.weight(v['grams'])} es correcto`,
    ),
  'weight-changed': (v, show) =>
    say(
      'El peso se movió',
      `Fijado en ${show.weight(v['fromGrams'])}, luego en ${show.weight(v['grams'])}. ¿Alguien se apoyó?`,
      `${show.weight(v['grams'])} es correcto`,
    ),
  'named-late': (v, show) =>
    say(
      'Se nombró cuando ya bajó',
      `Nadie estaba nombrado mientras había ${show.weight(v['grams'])} en la plataforma. ¿Es el peso de este animal?`,
      'era este animal',
    ),
  'too-young': (v, show) =>
    say(
      'Demasiado joven',
      `Tiene ${show.number(v['days'])} días; esta regla es desde ${show.number(v['least'])} días.`,
    ),
  'age-unknown': (v, show) =>
    say(
      '¿Qué edad tiene?',
      `Esta regla no es para animales de menos de ${show.number(v['least'])} días, y su nacimiento no está anotado.`,
      'tiene edad suficiente',
    ),
  'too-light': (v, show) =>
    say(
      'Pesa muy poco',
      `${show.weight(v['grams'])} en la plataforma; esta regla empieza en ${show.weight(v['leastGrams'])}.`,
      `pesa más de ${show.weight(v['leastGrams'])}`,
    ),
  'early-pregnancy': (v, show) =>
    say(
      '¿Recién preñada?',
      v['bredAtMs'] === undefined
        ? `Los machos la dejaron ${show.day(v['malesAtMs'])}. No antes de pasar ${show.number(v['days'])} días: puede dañar a la cría por nacer.`
        : `Cubierta ${show.day(v['bredAtMs'])}. No antes de pasar ${show.number(v['days'])} días: puede dañar a la cría por nacer.`,
    ),
  'breeding-unknown': (v, show) =>
    say(
      '¿Estuvo con un macho?',
      `No en los primeros ${show.number(v['days'])} días de preñez: puede dañar a la cría por nacer. No hay monta anotada.`,
      'no está recién preñada',
    ),
  'not-in-milk': () =>
    say('No si da leche', 'Su leche es para personas, y esta regla deja fuera a esos animales.'),
  'not-for-dairy': () =>
    say('No para hembras lecheras', 'Ni estando seca: no se lo dé si su leche es alguna vez para personas.'),
  'conflict-given': (v, show) =>
    say(
      'No va con el último',
      `Recibió un organofosforado ${show.day(v['lastGivenAtMs'])}. No los dos en ${show.number(v['days'])} días: se empeoran uno al otro.`,
    ),
  'conflict-window': (v, show) =>
    say(
      'Sin organofosforados',
      `Ningún organofosforado a menos de ${show.number(v['days'])} días: baño, lomo o collar.`,
    ),
  'milk-time-unknown': () =>
    say(
      'Leche: plazo desconocido',
      'Sin plazo de leche conocido. Pregunte al veterinario; hasta entonces su leche no es para personas.',
      'la leche se guarda aparte',
    ),
  'milk-not-for-people': () =>
    say(
      'Leche: no para personas',
      'Después de este medicamento la leche de este animal no es para personas.',
      'la leche no se usa',
    ),
  'interval-crosses-ceiling': (v, show) =>
    say(
      'Puede ser demasiado',
      `Entre báscula y jeringa puede llegar a ${show.rate(v['high'])}; el límite es ${show.rate(v['ceiling'])}. Ayuda una jeringa más fina o una jarra más diluida.`,
      'darla de todos modos',
    ),
  'interval-crosses-floor': (v, show) =>
    say(
      'Puede ser muy poco',
      `Entre báscula y jeringa puede quedar en ${show.rate(v['low'])}; bajo ${show.rate(v['floor'])} cría parásitos resistentes.`,
      'darla de todos modos',
    ),
  'above-target': (v, show) =>
    say(
      'Más que la meta',
      `La raya más cercana da ${show.rate(v['value'])}; la meta es ${show.rate(v['target'])}: ayudaría una jeringa más fina.`,
      'dar la dosis mayor',
    ),
  'below-target': (v, show) =>
    say(
      'Menos que la meta',
      `La raya más cercana da ${show.rate(v['value'])}; la meta es ${show.rate(v['target'])}: muy poco cría parásitos resistentes.`,
      'dar la dosis menor',
    ),
  'clock-untrusted': (v, show) =>
    say(
      'El reloj no está puesto',
      `No se pueden saber las edades. Jarra mezclada ${show.when(v['mixedAtMs'])}; última dosis de este medicamento: ${
        v['lastGivenAtMs'] === undefined ? 'ninguna anotada' : show.when(v['lastGivenAtMs'])
      }.`,
      'jarra fresca, dosis debida',
    ),
  'scale-unchecked': (v, show) =>
    say(
      'Plataforma sin verificar',
      v['lastAtMs'] === undefined
        ? 'No hay prueba con un peso conocido. Hágala en Cobertizo: diez minutos y un peso conocido.'
        : `Última prueba con un peso conocido: ${show.day(v['lastAtMs'])}; se pide cada ${show.number(v['days'])} días.`,
      'el peso tal como está',
    ),
  'scale-check-failed': (v, show) =>
    v['failedAtMs'] === undefined
      ? say(
          'Prueba muy atrasada',
          `Última prueba de la báscula: ${show.day(v['lastAtMs'])}; se pide cada ${show.number(v['days'])} días. Hágala en Cobertizo.`,
          'el peso tal como está',
        )
      : say(
          'Báscula: prueba fallida',
          `El ${show.day(v['failedAtMs'])} se desvió más de lo que puede. Hágala reparar y pruébela otra vez.`,
          'el peso tal como está',
        ),
  'test-resistant': (v, show) =>
    say(
      'Aquí lo resisten',
      `Prueba del ${show.localDate(v['testedAtMs'])}: RESISTENTE en esta especie, los huevos ${esReductionTest.change(v['reduction'] ?? 0, show)}. Pida otro al veterinario.`,
      'darlo de todos modos',
    ),
  'test-low-resistant': (v, show) =>
    say(
      'Empiezan a resistirlo',
      `Prueba del ${show.localDate(v['testedAtMs'])}: RESISTE POCO en esta especie, los huevos ${esReductionTest.change(v['reduction'] ?? 0, show)}.`,
    ),
  'extra-label': () =>
    say('Orden veterinaria', 'No está en la etiqueta para esta especie: por orden del veterinario.', ''),
};
