/** Beside every answer by which someone could be hurt. */
export const CAUTION =
  "This is arithmetic on what was entered. The plate, the maker's manual, local law and a qualified person come first.";

export function whyYou(yardName: string): string {
  return `You get this because you are one of the people of ${yardName}. An owner of the yard can change what comes to you.`;
}
