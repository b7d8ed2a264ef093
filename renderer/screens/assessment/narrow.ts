/**
 * Where the window is narrow or the text large, by whatever way, what stood side by side stands one
 * below the other.
 */
export const narrow = '@container (max-width: 54rem)'
