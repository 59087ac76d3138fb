/** Words of the list of licences. */
export const licenceWords = {
  title: 'Licences',
  what: 'Undertrim is free to use, copy and change. It is made with the work below, each on its own terms.',
  reading: 'Reading the list',
  failed: 'The list could not be read. Close the settings and open them again.',
} as const;
