/** Spanish of the names and sentences that ship in English: medicines, what is said of them, why a device is lost. */
const SHIPPED: Readonly<Record<string, string>> = {
  Levamisole: 'Levamisol',
  'levamisole hydrochloride': 'levamisol HCl',
  Albendazole: 'Albendazol',
  albendazole: 'albendazol',
  Fenbendazole: 'Fenbendazol',
  fenbendazole: 'fenbendazol',
  Ivermectin: 'Ivermectina',
  ivermectin: 'ivermectina',
  Moxidectin: 'Moxidectina',
  moxidectin: 'moxidectina',
  'Thiamine (B1)': 'Tiamina (B1)',
  thiamine: 'tiamina',
  'Common practice, no source': 'Práctica común, sin fuente',
  'Dairy kids to 3 months': 'Cabritos lecheros hasta 3 meses',
  'Lambs on Scottish farms': 'Corderos en fincas de Escocia',
  'adult liver fluke': 'duela adulta del hígado',

  'Not on the label: only on a veterinarian’s direction':
    'No está en la etiqueta: solo por orden de un veterinario',
  'A weak or dried-out animal: call the vet first':
    'Animal débil o deshidratado: primero llame al veterinario',
  'A true solution: swirl till clear': 'Se disuelve del todo: revuelva hasta que aclare',
  'Head level, over the back of the tongue, slowly': 'Cabeza a nivel, sobre el fondo de la lengua, despacio',
  'Wear gloves': 'Use guantes',
  'Do not breathe the powder': 'No respire el polvo',
  'Keep from children and other stock': 'Lejos de niños y de otros animales',
  'Wash off splashes: rarely it harms people’s blood':
    'Lave las salpicaduras: rara vez daña la sangre de las personas',
  'Thiamine in the same visit, where the vet has directed it':
    'Tiamina en la misma visita, si el veterinario la ordenó',
  'Drooling, lip licking, head shaking, trembling, staggering, hyperactivity':
    'Babea, se lame los labios, sacude la cabeza, tiembla, se tambalea, está muy inquieto',
  'Call the vet at once. Keep it quiet, give nothing more':
    'Llame enseguida al veterinario. Téngalo tranquilo, no le dé nada más',
  'It can deform the unborn: never in early pregnancy':
    'Puede deformar a la cría por nacer: nunca al principio de la preñez',
  'Labelled for goats not giving milk only': 'Su etiqueta es solo para cabras que no dan leche',
  'Not for dairy females of breeding age': 'No para hembras lecheras en edad de cría',
  'Shake the bottle: what settled is stronger than what floats':
    'Agite el frasco: lo del fondo es más fuerte que lo de arriba',
  'Wash off splashes; do not eat or smoke': 'Lave las salpicaduras; no coma ni fume',
  'Not for calves to be sold as veal': 'No para terneros que se venden como ternera blanca',
  'Shake well before use': 'Agite bien antes de usar',
  'Keep at or below 25 °C; do not freeze': 'Guarde a 25 °C o menos; no congele',
  'Only the drench: never an injection or a pour-on by mouth':
    'Solo el oral: nunca por la boca un inyectable ni uno para el lomo',
  'Turn the bottle over once or twice': 'Voltee el frasco una o dos veces',
  'Keep from light': 'Protéjalo de la luz',
  'Not for ewes whose milk people take': 'No para ovejas cuya leche es para personas',
  'Not for dairy goats in milk': 'No para cabras lecheras que dan leche',
  'As the vet showed you: it is not a drench': 'Como le mostró el veterinario: no se da por la boca',
  'A clean needle each time': 'Una aguja limpia cada vez',

  'the two rates disagree: one in mg/lb is 0.454 times the one in mg/kg for the same dose':
    'las dos tasas no concuerdan: la de mg/lb es 0.454 veces la de mg/kg para la misma dosis',
  'the percentage is not the strength in mg/mL: 10 mg/mL are 1 %':
    'el porcentaje no es la concentración en mg/mL: 10 mg/mL son 1 %',
  'the active weighs less than the whole powder: is the gross mass in its place?':
    'el activo pesa menos que todo el polvo: ¿se puso la masa total en su lugar?',
  'active over volume is not the strength printed: wrong volume, or gross mass?':
    'el activo entre el volumen no da la concentración impresa: ¿volumen equivocado, o masa total?',
  'the ceiling lies above the target': 'el límite está por encima de la meta',
  'the floor lies below the target': 'el mínimo está por debajo de la meta',
  'a withdrawal is never nothing: give its time, or unknown':
    'un plazo nunca es cero: ponga su tiempo, o que no se sabe',

  'Another device of this kiosk uses the same port. Set one of the two up again.':
    'Otro aparato de este quiosco usa el mismo puerto. Instale de nuevo uno de los dos.',
  'It is plugged in but sends nothing this format can read. Check that it is switched on, and its format and speed.':
    'Está conectada, pero no envía nada que este formato lea. Revise que esté encendida, su formato y su velocidad.',
  'It is plugged in but has stopped sending. Check that it is switched on.':
    'Está conectada, pero dejó de enviar. Revise que esté encendida.',
  'The cable or adapter came out: push it home.': 'Se salió el cable o el adaptador: métalo bien.',
  'The port is open but no weight comes: check power, cable, and the format and speed set for it.':
    'El puerto está abierto pero no llega peso: revise la corriente, el cable, y el formato y la velocidad puestos.',
  'Nothing is plugged in under this name: check the cable and the adapter.':
    'No hay nada conectado con este nombre: revise el cable y el adaptador.',
  'This user may not open the port: install the device rules, or join the group that owns it.':
    'Este usuario no puede abrir el puerto: instale las reglas de aparatos, o únalo al grupo dueño.',
  'Another program holds the port: close it there.': 'Otro programa tiene el puerto: ciérrelo ahí.',
  'This name is not a serial port: choose another in the Shed.':
    'Este nombre no es un puerto serie: elija otro en Cobertizo.',
  'The port does not open: pull the adapter out and plug it in again.':
    'El puerto no se abre: saque el adaptador y métalo otra vez.',
};

const SYRINGE = /^(\d+) mL syringe$/;
const WORD = /^Set on the (farm|veterinarian)’s word: (.+)$/;

/** Spanish of a name or sentence that ships; what the farm wrote itself stays as it was written. */
export function esShipped(text: string): string {
  const [, whose, name] = WORD.exec(text) ?? [];
  if (whose !== undefined)
    return `Puesto por orden ${whose === 'farm' ? 'de la finca' : 'del veterinario'}: ${name}`;
  const [, millilitres] = SYRINGE.exec(text) ?? [];
  return millilitres === undefined ? (SHIPPED[text] ?? text) : `jeringa de ${millilitres} mL`;
}
