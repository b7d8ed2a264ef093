/**
 * For what is wider than its room and scrolls: the ring of a control at its edge has room inside,
 * so that it is never cut off.
 */
export const scrollsX = { overflowX: 'auto', mx: -0.75, px: 0.75, my: -1.5, py: 1.5 } as const
/** A table begins where the title over it does. */
export const flush = { '& tr > :not(* + *)': { pl: 0 } } as const
