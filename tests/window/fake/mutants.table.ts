/** Lines of the shell made wrong, one at a time: what a slip of the hand could make of them. */
import type { Mutant } from './mutant.ts'

interface Row extends Mutant {
	/** The checks that could notice, in their order; the last one is what it is about. */
	checks: readonly [string, ...string[]]
	/** Where no check notices: what guards instead. */
	unseen?: string
}
const main = 'main.ts'
const setUp = 'sets up real records through the bridge'
const answersNoFrame = ['answers no frame, on any channel'] as const

export const mutants: readonly Row[] = [
	{
		file: main,
		from: 'app.enableSandbox()\n',
		to: '',
		checks: ['asks for the sandbox before anything else'],
	},
	{
		file: main,
		from: 'secure: true, ',
		to: '',
		checks: ['registers its own scheme, and no other'],
	},
	{
		file: main,
		from: 'webPreferences: webPreferences(preload),',
		to: 'webPreferences: { ...webPreferences(preload), sandbox: false },',
		checks: ['gives the window no more rights than the table'],
	},
	{
		file: main,
		from: "action: 'deny'",
		to: "action: 'allow'",
		checks: ['opens no second window'],
	},
	{
		file: main,
		from: 'if (!mayNavigate(event.url, true, contents.getURL())) event.preventDefault()',
		to: '',
		checks: ['goes nowhere by an address'],
		unseen: 'what a window may not show is refused as what a frame may not show, too',
	},
	{
		file: main,
		from: '=> guard(contents))',
		to: '=> {})',
		checks: ['goes nowhere by an address'],
	},
	{
		file: main,
		from: 'cancel: !mayRequest(details.url)',
		to: 'cancel: false',
		checks: ['reaches no network'],
	},
	{
		file: main,
		from: 'decide(mayHave(permission, details.requestingUrl))',
		to: 'decide(true)',
		checks: ['asks for no permission and gets none but to copy'],
	},
	{
		file: main,
		from: '=> mayHave(permission, origin))',
		to: '=> permission !== undefined || origin === undefined)',
		checks: ['asks for no permission and gets none but to copy'],
	},
	{
		file: main,
		from: 'setDevicePermissionHandler(() => false)',
		to: 'setDevicePermissionHandler(() => true)',
		checks: ['reads no device'],
	},
	{
		file: main,
		from: 'if (!file) return event.preventDefault()',
		to: 'if (!file) return',
		checks: ['saves no program'],
	},
	{
		file: main,
		from: 'defaultPath: file.name',
		to: 'defaultPath: item.getFilename()',
		checks: ['saves a report under a plain name'],
	},
	{
		file: main,
		from: 'return otherPage\n\t\t\treturn opened.call(',
		to: 'void 0\n\t\t\treturn opened.call(',
		checks: answersNoFrame,
	},
	{
		file: main,
		from: "return { printed: false, says: '' }",
		to: 'void 0',
		checks: answersNoFrame,
	},
	{
		file: main,
		from: 'return otherPage\n\t\t\treturn chosenBy(',
		to: 'void 0\n\t\t\treturn chosenBy(',
		checks: answersNoFrame,
	},
	{
		file: main,
		from: 'if (window?.isMinimized()) window.restore()',
		to: '',
		checks: ['comes forward at a second start, which ends'],
	},
	{
		file: main,
		from: 'window?.focus()',
		to: '',
		checks: ['comes forward at a second start, which ends'],
	},
	{
		file: main,
		from: 'shown.destroy()',
		to: '',
		checks: ['prints pages in a window that nobody sees, and they are gone'],
	},
	{
		file: 'paper.ts',
		from: 'this.#pages.delete(path)',
		to: '',
		checks: ['prints pages in a window that nobody sees, and they are gone'],
	},
	{
		file: main,
		from: 'app.exit(1)\n\t\t}\n\t\tvoid made.loadURL(',
		to: 'app.exit(1)\n\t\t}\n\t\tvoid (() => {})(',
		checks: ['says that the screens stopped, and opens them again'],
	},
	{
		file: main,
		from: 'if (response === 1) void made.loadURL(startUrl)',
		to: '',
		checks: ['waits for screens that do not answer, or opens them again'],
	},
	{
		file: main,
		from: 'leaving) === 1) event.preventDefault()',
		to: 'leaving) === 0) event.preventDefault()',
		checks: ['asks before it closes over what is not saved'],
	},
	{
		file: 'power.ts',
		from: "power.on('suspend', goes)",
		to: '',
		checks: [setUp, 'locks when the PC sleeps'],
	},
	{
		file: 'power.ts',
		from: "power.on('lock-screen', goes)",
		to: '',
		checks: [setUp, 'locks when the screen of the PC is locked'],
	},
	{
		file: 'power.ts',
		from: 'setTimeout(() => void lock(), keepWithinMs)',
		to: 'void lock',
		checks: [setUp, 'locks the records where the page does not answer'],
	},
	{
		file: main,
		from: 'keepState(stateFile,',
		to: 'void (() => {})(stateFile,',
		checks: ['keeps its place and ends with its window'],
	},
	{
		file: main,
		from: "app.on('window-all-closed', () => app.quit())",
		to: '',
		checks: ['keeps its place and ends with its window'],
	},
	{
		file: main,
		from: "process.on('uncaughtException', fail)",
		to: '',
		checks: ['says that a fault of its own ended it'],
	},
	{
		file: 'preload.cjs',
		from: "contextBridge.exposeInMainWorld('lastwright', {",
		to: "contextBridge.exposeInMainWorld('lastwright', { ipcRenderer,",
		checks: ['has one bridge of three functions and nothing of Node'],
	},
	{
		file: 'preload.cjs',
		from: "ipcRenderer.invoke('lastwright:print', base64)",
		to: "ipcRenderer.invoke('lastwright:call', base64)",
		checks: ['prints pages in a window that nobody sees, and they are gone'],
	},
]
