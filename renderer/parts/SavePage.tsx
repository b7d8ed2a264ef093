/** Saves a document as one page for a screen reader, a telephone or large letters. */
import { Button } from '@mui/material'
import type { OutputOf } from '../../shared/contract.ts'
import { useHostAction } from '../query.ts'
import { saveText } from './files.ts'
import { Trouble } from './form.tsx'

interface SavePageProps {
	/** asks the host for the page */
	ask: () => Promise<OutputOf<'reports.page'>>
	/** Where another document stands beside it. */
	label?: string
}
export function SavePage({ ask, label = 'Save as a page for a screen reader' }: SavePageProps) {
	const { says, busy, run } = useHostAction()
	const save = () =>
		run(async () => {
			const { html, fileName } = await ask()
			saveText(html, fileName, 'text/html')
			return ''
		})
	return (
		<>
			<Button variant="outlined" disabled={busy} onClick={() => void save()}>
				{label}
			</Button>
			<Trouble says={says} />
		</>
	)
}
