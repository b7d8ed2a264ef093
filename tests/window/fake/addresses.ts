/**
 * Chromium alone knows no `app://`: the pages of the shell stand at an address of https that no
 * network reaches, and whatever the shell is told of has its own address again.
 */
const inside = 'https://lastwright.test'
const outside = 'app://lastwright'

export const toShell = (url: string): string => url.replace(inside, outside)
export const toBrowser = (url: string): string => url.replace(outside, inside)
export const isInside = (url: string): boolean => url.startsWith(`${inside}/`)
/** Where permissions of the pages are kept in the browser. */
export const browserOrigin = inside
export const shellOrigin = outside
