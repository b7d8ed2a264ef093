/** The parts of the system that the shell asks: dialogs, menu, screens, the opener, power. */
import { EventEmitter } from 'node:events'
import type {
	Dialog,
	MenuItemConstructorOptions,
	MessageBoxOptions,
	OpenDialogOptions,
	Screen,
	Shell,
} from 'electron'
import { answers, say } from './said.ts'

/** Dialogs stand before a window or before none. */
const wordsOf = <Options>(given: readonly unknown[]): Options => given.at(-1) as Options
type Asking = (...given: unknown[]) => Promise<{ response: number }>
type Opening = (...given: unknown[]) => Promise<{ canceled: boolean; filePaths: string[] }>
export const dialog = {
	showErrorBox: ((title, text) => say('error box', { title, text })) as Dialog['showErrorBox'],
	showMessageBox: (async (...given) => {
		say('message box', wordsOf<MessageBoxOptions>(given))
		return { response: answers.buttons.shift() ?? 0 }
	}) satisfies Asking,
	showMessageBoxSync: (...given: unknown[]): number => {
		say('message box', wordsOf<MessageBoxOptions>(given))
		return answers.buttons.shift() ?? 0
	},
	showOpenDialog: (async (...given) => {
		say('open dialog', wordsOf<OpenDialogOptions>(given))
		const path = answers.paths.shift()
		return { canceled: path === undefined, filePaths: path === undefined ? [] : [path] }
	}) satisfies Opening,
} satisfies { [Name in keyof Dialog]?: unknown }
export const shell: Pick<Shell, 'openExternal'> = {
	openExternal: async (url) => say('opened outside', url),
}
export const nativeTheme = { shouldUseDarkColors: false }
const workArea = { x: 0, y: 0, width: 1600, height: 1000 }
export const screen = {
	getAllDisplays: () => [{ workArea }] as ReturnType<Screen['getAllDisplays']>,
}
export const powerMonitor = new EventEmitter()

let lines: MenuItemConstructorOptions[] = []
// biome-ignore lint/complexity/noStaticOnlyClass: the runtime's is a class of this form
export class Menu {
	static buildFromTemplate(template: MenuItemConstructorOptions[]) {
		return { template }
	}
	static setApplicationMenu(menu: { template: MenuItemConstructorOptions[] } | null): void {
		lines = (menu?.template ?? []).flatMap(({ submenu }) => (Array.isArray(submenu) ? submenu : []))
	}
}
/** The lines of the menu that stands now. */
export const menuLines = (): readonly MenuItemConstructorOptions[] => lines
/** As a person does it. */
export function chooseInMenu(label: string): void {
	const line = lines.find((one) => one.label === label)
	if (!line?.click) throw new Error(`The menu has no line “${label}” that does something.`)
	line.click({} as never, undefined, {} as never)
}
