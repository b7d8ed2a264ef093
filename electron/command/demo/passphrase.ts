/** Opens the demo's records as the owner; said where it is opened. */
export const demoPassphrase = 'demo demo'
