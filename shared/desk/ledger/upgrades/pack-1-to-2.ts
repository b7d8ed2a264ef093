/** Optional keys came: the form of the file, the laptop, its turn, what changed in words. */
export const packFrom1To2 = (value: unknown): unknown => value
