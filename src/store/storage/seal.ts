/** Texts that show whether they are whole: a checksum stands before them. */

/** The text behind a line with its checksum. */
export const sealed = async (text: string): Promise<string> => `${await checksum(text)}\n${text}`;

/** What was sealed; null if it is not whole. */
export async function unsealed(text: string | null): Promise<string | null> {
  const end = text?.indexOf('\n') ?? -1;
  if (text === null || end < 0) return null;
  const rest = text.slice(end + 1);
  return text.slice(0, end) === (await checksum(rest)) ? rest : null;
}

/** SHA-256. */
export async function checksum(text: string): Promise<string> {
  const sum = await crypto.subtle.digest('SHA-256', new TextEncoder().encode(text));
  return Array.from(new Uint8Array(sum), (byte) => byte.toString(16).padStart(2, '0')).join('');
}
