/** Names that a study may bear, each with a mark of its own: invented. */
const kinds: readonly ((mark: string) => string)[] = [
  (mark) => `</script><script>alert(${mark})</script> & "quoted" 'name'`,
  (mark) => `${"W".repeat(136)}${mark.padStart(4, "w")}`,
  (mark) => `محطة ضخ المياه الشمالية ${mark}`,
  (mark) => `משאבת המים הצפונית ${mark}`,
  (mark) => `=HYPERLINK("x") {{name}} \${${mark}} %s <b>${mark}</b>`,
  (mark) => `Intake of the old mill, ${mark} of those along the shore between the weir and the dam`,
  (mark) => `🚢⚓ Łódź Λίμνη Озеро ${mark}`,
  (mark) => `Plain pump ${mark}`,
];

/** In letters: the report's numbers are counted, and a name's are not among them. */
const letters = (number: number): string =>
  number.toString(26).replace(/./g, (digit) => String.fromCharCode(97 + Number.parseInt(digit, 26)));

export const hostileName = (number: number): string => kinds[number % kinds.length]?.(letters(number)) ?? "";
