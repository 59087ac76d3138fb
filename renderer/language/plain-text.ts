/** Letters without accents or case, so that a name is found however it was typed. */
export const plainText = (text: string): string =>
  text
    .normalize('NFD')
    .replaceAll(/\p{Diacritic}/gu, '')
    .toLowerCase();
