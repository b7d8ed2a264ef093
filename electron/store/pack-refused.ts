/** A pack that cannot be used, in words. */
export class PackRefused extends Error {}
