/** Prints one document alone: the screen that it stands on stays off the paper. */
import { Box, GlobalStyles } from '@mui/material'
import { type ReactNode, useCallback, useState } from 'react'
import { createPortal, flushSync } from 'react-dom'
import type { LwDocument } from '../../../shared/engine/report/document.ts'
import { DocumentView } from '../DocumentView.tsx'

/** Letters of a sheet that holds on one page. */
const onPaper = {
	'.lw-sheet-paper': { display: 'none' },
	'@media print': {
		'body > :not(.lw-sheet-paper)': { display: 'none !important' },
		'.lw-sheet-paper': { display: 'block' },
		'.lw-sheet-paper article': {
			fontSize: '9pt !important',
			border: '0 !important',
			padding: '0 !important',
			maxWidth: 'none !important',
		},
		'.lw-sheet-paper article h3': { fontSize: '15pt !important' },
		'.lw-sheet-paper article h4': { fontSize: '10.5pt !important' },
		'.lw-sheet-paper .small, .lw-sheet-paper caption, .lw-sheet-paper dt': {
			fontSize: '8pt !important',
		},
	},
}
interface Printed {
	print: () => void
	/** What is printed, to be put anywhere on the screen. */
	paper: ReactNode
}
export function usePrinted(document: LwDocument | undefined): Printed {
	const [isPrinting, setPrinting] = useState(false)
	const print = useCallback(() => {
		addEventListener('afterprint', () => setPrinting(false), { once: true })
		// the browser takes what stands on the page when it is asked
		flushSync(() => setPrinting(true))
		window.print()
	}, [])
	const paper =
		isPrinting && document
			? createPortal(
					<Box className="lw-sheet-paper">
						<GlobalStyles styles={onPaper} />
						<DocumentView document={document} />
					</Box>,
					window.document.body,
				)
			: null
	return { print, paper }
}
