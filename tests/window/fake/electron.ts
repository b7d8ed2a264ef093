/** Stands where the shell imports `electron`: what of it the shell uses, and no more. */
export { app } from './app.ts'
export { ipcMain } from './messages.ts'
export { protocol, session } from './pages.ts'
export { dialog, Menu, nativeTheme, powerMonitor, screen, shell } from './system.ts'
export { BrowserWindow } from './window.ts'
