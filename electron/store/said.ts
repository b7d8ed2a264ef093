/** A failure of the records whose words are for the person, wherever it comes out. */
export class Said extends Error {}
