import type { Refusal } from '../../shared/intent.ts';

/** What each refusal means and what to do about it, in plain Spanish. */
export const REFUSAL_WORDS_ES: Readonly<Record<Refusal, string>> = {
  'unknown-intent':
    'El quiosco no conoce esta petición. No se hizo nada; GET /api/schema dice lo que conoce.',
  'bad-input': 'La petición no tiene la forma debida. No se hizo nada; GET /api/schema dice la forma.',
  'wrong-state':
    'Eso no va con lo que hay ahora en la pantalla. No se hizo nada; mire la pantalla y elija otra vez.',
  'id-reused': 'Este id se usó para otra petición. No se hizo nada; envíela con un id nuevo.',
  'no-such-jug': 'No existe esa jarra. Elija una que esté en uso.',
  'jug-out-of-life': 'Esta jarra ya es vieja, está vacía o se tiró. Mezcle una nueva.',
  'not-this-jug':
    'Esa no es la jarra por la que se pregunta. Mire el número de la jarra que tiene en la mano.',
  'not-an-extra':
    'Este medicamento no acompaña al que se acaba de dar. Termine con este animal y luego tómelo.',
  'jug-not-in-hand': 'Primero tome esta jarra en la plataforma, sin ningún animal encima.',
  'ask-open': 'Antes hay algo que mirar en este animal. Léalo y mantenga el botón.',
  'group-changed': 'El grupo, un peso o una jeringa cambió. Mire la dosis otra vez.',
  'more-than-drawn':
    'Eso es tanto como se cargó, o más. Ponga lo que las rayas muestran que queda en la jeringa.',
  'needs-held-press':
    'Hay otra jarra en uso que podría ser la de su mano. Mire el número y mantenga el botón.',
  'no-such-animal': 'Ese animal no está aquí. Regístrelo primero en Cobertizo.',
  'lost-tag': 'Un animal de aquí perdió una vez este arete. Mire quién lo lleva y elíjalo en la pantalla.',
  'no-such-tag': 'Este arete aún no es de ningún animal. Registre el animal en Cobertizo y déle el arete.',
  'tag-refused':
    'Ese no es un número de arete de animal: 15 cifras, un código de país o fabricante de 001 a 998 y un número que quepa.',
  'tag-in-use': 'Otro animal ya lleva este arete. Mire las dos orejas antes de seguir.',
  'name-in-use': 'Otro animal tiene ese nombre o número. Elija otro.',
  'not-one-animal': 'Estas dos fichas no pueden ser un animal: su especie difiere. Elija otro animal.',
  'merge-undecided': 'Las dos fichas dicen cosas distintas. Elija cuál es cierta y mantenga el botón.',
  'not-merged': 'Estas dos fichas no están unidas. Abra otra vez el animal y mire.',
  'in-round':
    'Uno de los dos está en la plataforma, o su dosis espera respuesta. Termine eso primero y vuelva.',
  'both-in-test':
    'Las dos fichas se muestrearon como dos animales en una prueba de parásitos. Unidas, cambiaría su resultado; no se hizo nada.',
  'animal-gone': 'Este animal se fue de la finca. Su ficha se guarda y ya no se cambia.',
  'not-in-milk': 'Ahora no se usa su leche. Toque primero “Leche usada”.',
  'females-only': 'Solo una hembra da leche, es cubierta o pare. Ponga primero qué es.',
  'day-in-future': 'Ese día aún no llega. Elija hoy o un día anterior.',
  'day-too-long-ago': 'Ningún animal vive tanto. Elija un día más reciente.',
  'before-birth': 'Eso es antes de que naciera. Corrija el día que esté mal.',
  'same-tag': 'Ya lleva ese arete. Lea el nuevo.',
  'nothing-scored': 'No se evaluó nada. Toque lo que ve y luego anótelo.',
  'photo-too-large': 'Esa foto es demasiado grande. Envíe una de 300 kB como mucho.',
  'not-a-photo': 'Eso no es una imagen JPEG o WebP completa. Tómela otra vez.',
  'no-such-photo': 'El quiosco no tiene esa foto. Tómela otra vez.',
  'no-such-score': 'Esa evaluación ya no existe. Mire otra vez el animal.',
  'no-such-weighing': 'El animal no tiene ese peso. Mire su crecimiento y elija otra vez.',
  'threshold-out-of-range':
    'Ese umbral trataría a todos o a ninguno. Elija uno dentro de los límites que muestra la pantalla.',
  'not-scored-so': 'Esa evaluación no es para esta especie. Omítala.',
  'no-such-file': 'Ese archivo no está en la carpeta import. Póngalo ahí y mire otra vez.',
  'file-too-large': 'Este archivo es demasiado grande: 64 MB para un rebaño, 4 MB para el clima. Divídalo.',
  'no-such-preview': 'Esa vista previa ya no vale. Lea el archivo otra vez.',
  'preview-outdated':
    'Un animal del archivo se agregó después de la vista previa. No se escribió nada; lea el archivo otra vez.',
  'nothing-to-take-in':
    'Ninguna fila del archivo está bien. No se escribió nada; corríjalo y léalo otra vez.',
  'no-such-caution': 'Ese aviso ya no vale. Mire otra vez la pantalla.',
  'cannot-pass-stop': 'Esto es un alto: aquí no se puede pasar. Haga lo que dice, o salte el animal.',
  'offer-ended': 'Esta dosis ya no se ofrece. Si se dio, dígalo donde la pantalla pregunta.',
  'platform-not-ready':
    'La plataforma no muestra nada ahora. Espere a que su luz diga que responde y pese otra vez.',
  'no-such-packet': 'No existe ese sobre entre los medicamentos.',
  'no-such-lot': 'No existe ese lote en las existencias. Elija uno de los que se muestran.',
  'lot-expired':
    'El mes impreso en este lote ya pasó, y la etiqueta dice que no se use después. Tome otro lote; tire este.',
  'more-than-on-hand': 'De este lote hay menos que eso. Cuéntelo de nuevo primero.',
  'temperature-out-of-range':
    'Con agua entre 1 y 40 °C se puede pesar una concentración. Elija otra vez la temperatura.',
  'bench-not-ready':
    'La báscula de mesa no muestra nada ahora. Revise su cable y espere a que su luz diga que responde.',
  'bench-moving': 'La báscula de mesa no reposa aún. Quite las manos y espere un segundo.',
  'no-jug-on-scale': 'La báscula de mesa está vacía. Ponga primero la jarra.',
  'scale-too-coarse':
    'La báscula de mesa cuenta en pasos demasiado grandes para pesar bien esta mezcla. Mezcle más de una vez, o use una báscula más fina.',
  'too-little-water': 'Hay muy poca agua en la jarra. Siga echando hasta la marca.',
  'tared-mid-way': 'Se pulsó tara en mitad del trabajo. Empiece otra vez.',
  'no-such-amount': 'Tanto polvo no se mezcla en una jarra. Elija una de las cantidades que se muestran.',
  'stronger-than-known': 'Nada dice que tanto polvo se disuelva en tan poca agua. Elija un volumen mayor.',
  'too-weak':
    'Eso es más de ocho veces el agua de su sobre: una dosis sería un trago. Mire la unidad y el punto decimal.',
  'far-from-label':
    'Eso está lejos del volumen propio del sobre. Mire la unidad y el punto decimal; mantenga el botón si es lo que quiere.',
  'holds-mix': 'Esta jarra pesa como una en uso con su mezcla dentro. Quítela y use una vacía.',
  'no-such-vessel': 'No existe esa jarra. Elija una de las que se muestran.',
  'needs-held-word': 'Mire dentro de la jarra. Si está vacía y seca, mantenga el botón.',
  'far-too-much-water':
    'Eso es mucha más agua de la prevista. Vacíe la jarra y eche otra vez, o mantenga el botón: las dosis siguen lo que hay.',
  'jug-not-back': 'Se levantó la jarra o se tocó la báscula. Haga primero lo que dice la pantalla.',
  'no-powder-seen': 'La báscula no vio llegar polvo. Échelo primero en la jarra.',
  'powder-far-off':
    'Eso está lejos del polvo previsto. Eche más, o mantenga el botón: las dosis siguen lo que hay.',
  'jug-weight-unknown':
    'Nunca se supo cuánto pesa vacía esta jarra: la báscula no puede probarla. Lea su número y su fecha, y mantenga.',
  'jug-weighs-otherwise': 'Esa no es esta jarra, o no es lo que debería quedar en ella.',
  'jugs-weigh-alike':
    'Dos jarras de este medicamento pesarían ahora lo mismo. Lea el número y la fecha, y mantenga el botón.',
  'no-such-weight': 'Esta báscula no se prueba con ese peso. Elija uno de los que se muestran.',
  'weight-too-light': 'Este peso es muy liviano para decir algo en esta báscula. Elija uno mayor.',
  'scale-not-ready':
    'La báscula no muestra nada ahora. Revise su cable y espere a que su luz diga que responde.',
  'scale-moving': 'La báscula no reposa aún. Quite las manos y espere un segundo.',
  'scale-tared': 'La báscula está en neto. Póngala en bruto y siga.',
  'not-at-zero': 'La báscula no está en cero. Despéjela y pulse cero en la báscula.',
  'nothing-on-scale': 'Hay muy poco en la báscula. Ponga primero el peso.',
  'weight-still-on': 'El peso sigue en la báscula. Retírelo primero.',
  'bench-in-use': 'La báscula de mesa se usa para otro trabajo. Termínelo o deténgalo primero.',
  'no-such-mark': 'Esta jeringa no tiene esa raya.',
  'too-coarse-for-syringe':
    'La báscula de mesa cuenta en pasos demasiado grandes para decir qué tan bien mide esta jeringa.',
  'nothing-delivered': 'La báscula no vio llegar una carga entera. Vacíe la jeringa en el vaso y siga.',
  'more-than-one-delivery': 'Llegó más que una carga. Omita esta y siga con la próxima.',
  'not-checked': 'Esta jeringa no tiene prueba que retirar: cuenta como dice su catálogo.',
  'no-such-count': 'No existe ese conteo de huevos. Mire otra vez la lista.',
  'no-such-test': 'No existe esa prueba. Mire otra vez la lista.',
  'test-ended': 'Esta prueba terminó. Planee una nueva después de la próxima ronda.',
  'not-in-test': 'Este animal no tiene muestra en esta etapa de la prueba. Elija uno de los que se muestran.',
  'already-counted':
    'Ya está anotado un conteo de este animal. Para cambiarlo, retírelo en la lista de conteos de huevos.',
  'one-animal-a-sample': 'En una prueba cada muestra es de un animal. Cuéntelas una por una.',
  'other-factor':
    'Las demás de esta toma se contaron con otro factor. Cuente esta con el mismo, o retire aquellas.',
  'not-whole-dose':
    'No todos estos recibieron una dosis entera, con su peso, en el último día. Mire otra vez la lista.',
  'needs-untreated': 'Sin una muestra de antes hacen falta al menos dos animales sin tratar para comparar.',
  'already-in-test': 'Estas dosis ya están en una prueba. Abra esa.',
  'no-such-treatment': 'No existe esa fila en el diario.',
  'already-corrected': 'Esta fila ya se retiró como no dada.',
  'no-such-bottle': 'No existe ese líquido entre los medicamentos. Agréguelo en Cobertizo, o elija otro.',
  'bottle-expired': 'El mes impreso en este frasco ya pasó. No lo use.',
  'no-such-regimen': 'No existe esa regla entre los medicamentos.',
  'needs-veterinarian': 'Este uso no está en la etiqueta: necesita la orden de un veterinario.',
  'needs-rate': 'Ninguna fuente da una tasa para esta regla. Ponga la tasa que dio el veterinario y apruebe.',
  'rate-not-needed':
    'Esta regla tiene una tasa con fuente. Una tasa propia del veterinario es otra regla: agréguela en Cobertizo.',
  'no-such-medicine': 'No existe ese medicamento. Elija uno de los que se muestran.',
  'contradicts-itself':
    'Lo que se puso se contradice. Mire otra vez la etiqueta y ponga bien la cifra equivocada.',
  'already-there': 'Eso ya está, con las mismas cifras. No se agregó nada.',
  'medicines-unreadable':
    'El archivo medicines.json no se puede leer: no se le agregó nada. Corríjalo como dice Cobertizo, Reglas de dosis.',
  'not-our-own': 'Solo lo que esta finca agregó se puede dejar de usar, y una sola vez.',
  'still-approved': 'Esta regla está aprobada. Retire primero la aprobación y luego deje de usarla.',
  'still-in-service':
    'Puede haber aún una jarra o un frasco en uso. Termínelo o tírelo primero, y luego deje de usarlo.',
  'no-such-syringe': 'No existe esa jeringa en el catálogo.',
  'person-known': 'Ese nombre ya está. Tóquelo o deletree otro.',
  'too-many-people': 'Doce personas son el máximo. Quite antes a alguien.',
  'last-person': 'Alguien tiene que trabajar aquí. Añada antes otro nombre.',
  'no-such-panel':
    'Ninguna pantalla tiene ese tamaño. Ponga la tarjeta sobre el cristal y haga el dibujo igual de ancho.',
  'no-such-zone': 'Este equipo no conoce esa zona horaria. Elija otra ciudad.',
  'work-waits':
    'Aquí espera trabajo: conteste lo abierto, deje la jarra y vacíe la plataforma; después practique.',
  'only-for-real': 'La demo no cambia esto. Use antes básculas reales, en Cobertizo, Aparatos.',
  'no-such-person': 'Según la configuración aquí no trabaja esa persona.',
  'time-before-program':
    'Este quiosco se hizo después de ese día. Mire el día y el año, y ponga la hora otra vez.',
  'time-not-kept': 'Esta placa no dice cuánto lleva encendida. Ponga el reloj en la propia placa.',
  'server-knows-time':
    'La red pone en hora este reloj y dice otra hora. No se cambió nada; mire la hora que puso.',
  'demo-only': 'Esto solo existe en la demo.',
  'not-in-demo':
    'La demo tiene aparatos simulados. Mantenga “básculas reales” en Cobertizo, Aparatos, para instalar los de verdad.',
  'set-by-environment':
    'Las variables BYRESIDE_ del comando de arranque ponen los aparatos. Quítelas ahí y arranque otra vez.',
  'port-in-use': 'Otro aparato de este quiosco usa ese puerto. Elija otro, o quite ese aparato.',
  'no-such-proposal': 'No existe esa propuesta. Mire la pantalla y elija otra vez.',
  'no-such-division': 'Lo que mostró la báscula no cae en esos pasos. Elija uno de los que se ofrecen.',
  'no-plain-lines':
    'No envía líneas que se puedan mostrar. En el menú de la báscula, póngala a enviar de continuo.',
  'no-pattern-yet':
    'Aún no hay manera de leerla. Ponga un peso y quítelo, despacio, y déjelo reposar entre medias.',
  'not-proved':
    'Aún no está probado. Ponga un peso conocido, o pase un arete, hasta que la pantalla diga que es correcto.',
  'tare-word-needed':
    'Este formato no distingue bruto de neto. Mantenga el botón solo si nadie pulsa nunca tara en esta báscula.',
  'bench-only':
    'Este formato no distingue bruto de neto: esta báscula no puede pesar animales. Ponga otro formato en la báscula.',
  'no-zero-command': 'Esta báscula no acepta el cero del quiosco. Pulse cero en la propia báscula.',
  'something-on-scale': 'Hay algo en la báscula. Quítelo primero y luego póngala en cero.',
  'no-backup-place': 'No hay adónde copiar. Enchufe una memoria USB y espere unos segundos.',
  'no-invitation': 'Aquí no hay invitación de un centro. Enchufe la memoria en la que se escribió.',
  'no-such-alarm': 'Eso ya se leyó.',
  'follows-only': 'Esta pantalla solo mira. Hágalo en el propio quiosco.',
  'not-paired': 'Este aparato no está vinculado. En el quiosco: Cobertizo, Personas, Teléfonos.',
  'needs-pin': 'Esta pantalla solo mira hasta que diga quién es: toque «Trabajar aquí» y su PIN.',
  'needs-set-up': 'Este aparato no puede configurar el quiosco. Hágalo allí, o vincúlelo de nuevo para eso.',
  'board-only': 'Esto se hace en el propio quiosco.',
  'network-off': 'Otros aparatos no llegan ahora al quiosco. Actívelo primero.',
  'network-set-by-file': 'El archivo kiosk.json lo activa. Quite "network", "on" de él y arranque otra vez.',
  'access-unreadable':
    'El archivo access.json de la carpeta network no se puede leer, así que nadie entra. Restáurelo, o bórrelo para empezar de cero, y arranque otra vez.',
  'too-many-devices': 'Ya hay tantos aparatos vinculados como caben. Quite uno que no se use.',
  'no-such-device': 'Ese aparato ya no está vinculado.',
  'not-configured':
    'La configuración del quiosco no se puede leer: no se puede hacer nada. La pantalla dice qué corregir.',
  'not-written':
    'El disco no aceptó la anotación: no se anotó nada. Libere el disco o revise la tarjeta, y pulse otra vez.',
};
