import type { Catalogue } from '../../tongue.ts'

/** Cards to print. */
export const cards: Catalogue = {
  Cards: 'Tarjetas',
  'Cards to print': 'Tarjetas para imprimir',
  'A wall card for each ladder and a pocket card for each rung, and how to print them.': 'Una tarjeta de pared por escalera y una de bolsillo por peldaño, y cómo imprimirlas.',
  'A wall card shows a whole ladder. A pocket card shows one rung. {1}.': 'La tarjeta de pared enseña una escalera entera. La de bolsillo enseña un peldaño. {1}.',
  'How to print': 'Cómo imprimir',
  'Wall cards fit A4, A3 and Letter, portrait or landscape. On A3 the same card is larger, to be read from farther off.':
    'Las tarjetas de pared caben en A4, A3 y Carta, en vertical o en horizontal. En A3 la misma tarjeta es más grande, para leerla desde más lejos.',
  'Pocket cards are A6, four to a sheet of A4. Cut along the lines.': 'Las tarjetas de bolsillo son A6, cuatro por hoja A4. Se cortan por las líneas.',
  'One colour is enough. Nothing is told by colour.': 'Basta un color. Nada se dice con el color.',
  'This handbook names no address of its own, so its cards carry no code and say in words where to look.': 'Este manual no indica una dirección propia, así que sus tarjetas no llevan código y dicen con palabras dónde mirar.',
  'The code on a card leads to its page, and names the edition the card was printed from.': 'El código de una tarjeta lleva a su página y dice de qué edición se imprimió.',
  'Take a card down when a new edition is out, and print it again.': 'Retira la tarjeta cuando salga una edición nueva, e imprímela otra vez.',
  'All cards': 'Todas las tarjetas',
  'wall card': 'tarjeta de pared',
  '{1} pocket cards': { one: '{1} tarjeta de bolsillo', other: '{1} tarjetas de bolsillo' },
  'On paper: <1>wall card of the ladder</1>, <2>{1}</2>': 'En papel: <1>tarjeta de pared de la escalera</1>, <2>{1}</2>',
  'a pocket card a rung': 'una tarjeta de bolsillo por peldaño',
  'pocket card of this rung': 'tarjeta de bolsillo de este peldaño',
  Paper: 'Papel',
  A4: 'A4',
  A3: 'A3',
  Letter: 'Carta',
  Lying: 'Orientación',
  portrait: 'vertical',
  landscape: 'horizontal',
  'Or take it <1>as a PDF</1>.': 'O llévatela <1>en PDF</1>.',
  'Wall card: {1}': 'Tarjeta de pared: {1}',
  '{1} for the wall: its rungs in order with load, entry and cautions, form points, stop signs and who asks first.':
    '{1} para la pared: sus peldaños en orden, con carga, entrada y precauciones, puntos de forma, señales de parar y quién consulta antes.',
  'Choose the paper, then print this page from the browser’s menu, at full size and with the browser’s own margins. Only the card is printed.{1}':
    'Elige el papel e imprime esta página desde el menú del navegador, a tamaño completo y con los márgenes del navegador. Solo se imprime la tarjeta.{1}',
  'Pocket cards: {1}': 'Tarjetas de bolsillo: {1}',
  '{1} for the pocket: a card of A6 for each rung, four to a sheet of A4.': '{1} para el bolsillo: una tarjeta A6 por peldaño, cuatro por hoja A4.',
  'One card a rung. Print this page on A4 at full size, without margins, and cut along the lines. A card with more safety notes than A6 holds takes the room of two.{1}':
    'Una tarjeta por peldaño. Imprime esta página en A4 a tamaño completo, sin márgenes, y corta por las líneas. Una tarjeta con más notas de seguridad de las que caben en A6 ocupa el sitio de dos.{1}',
  'Code that leads to {1}': 'Código que lleva a {1}',
  'In the handbook: {1}': 'En el manual: {1}',
  'Estimates for an average body, no medical advice. Local rules, makers and qualified people come first.':
    'Estimaciones para un cuerpo medio, no es consejo médico. Las normas del lugar, los fabricantes y las personas cualificadas tienen prioridad.',
  '{1}, on {2}': '{1}, en {2}',
  'the standard': 'el criterio',
  'Before this rung:': 'Antes de este peldaño:',
  Watching: 'Quién mira',
  'More in the handbook.': 'Más en el manual.',
  'More by the code.': 'Más con el código.',
  'The safety notes of this rung are longer than a sheet holds. Read its page in the handbook before anyone starts.':
    'Las notas de seguridad de este peldaño no caben en una hoja. Lee su página en el manual antes de que nadie empiece.',
  'Aim: {1}. The standard before each next rung: <1>{2}</1>, all of it in form. {3}': 'Meta: {1}. El criterio antes de cada peldaño siguiente: <1>{2}</1>, todo en forma. {3}',
  'Load: {1}.': 'Carga: {1}.',
  '{1}The thick bar is for an average body, the thin line spans the bodies tried.': '{1}La barra gruesa es para un cuerpo medio; la línea fina abarca los cuerpos probados.',
  'Every rep shows': 'En cada repetición se ve',
  'sheet {1} of {2}': 'hoja {1} de {2}',
  'No wall card is drawn: {1}. Use the pocket cards.': 'No se dibuja tarjeta de pared: {1}. Usa las de bolsillo.',
  'its form points, stop signs and ask-first list leave no room for a rung on the same sheet': 'sus puntos de forma, sus señales de parar y su lista de quién consulta antes no dejan sitio para un peldaño en la misma hoja',
}
