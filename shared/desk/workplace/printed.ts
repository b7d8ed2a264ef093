/** How printing through the desktop window ended. */
export interface Printed {
	/** whether the pages went to a printer */
	printed: boolean
	/** why they did not, in words; empty where they did, or the person left the dialog */
	says: string
}
