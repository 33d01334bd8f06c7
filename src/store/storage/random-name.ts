/** 128 random bits; `crypto.randomUUID` is missing where the page is served without TLS in the shop's own network. */
export const randomName = (): string =>
  Array.from(crypto.getRandomValues(new Uint32Array(4)), (word) => word.toString(36)).join('-');
