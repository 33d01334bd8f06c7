/** A file of the build, fetched when it is first asked for; `what` it is stands in the error. */
export async function fetched(url: string, what: string): Promise<Uint8Array> {
  const response = await fetch(url).catch(() => null);
  if (!response?.ok) {
    throw new Error(`The ${what} could not be loaded. It wants the network once; after that it works without.`);
  }
  return new Uint8Array(await response.arrayBuffer());
}
