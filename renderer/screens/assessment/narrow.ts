/**
 * Where the window is narrow or the text large, by whatever way, what stood side by side stands one
 * below the other.
 */
export const narrow = '@container (max-width: 54rem)'
/** Where there is room for a third column, and for the head in one line. */
export const broad = '@container (min-width: 104rem)'
