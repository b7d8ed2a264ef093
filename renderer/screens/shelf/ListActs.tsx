/** What can be done with the shelf as a whole. */
import { Button } from '@mui/material'
import { navigate } from 'wouter/use-hash-location'
import { call } from '../../host.ts'
import { saveText } from '../../parts/files.ts'
import { Trouble } from '../../parts/form.tsx'
import { PrintButton } from '../../parts/Print.tsx'
import { useHostAction } from '../../query.ts'

export const AddModel = () => (
	<Button variant="contained" onClick={() => navigate('/shelf/new')}>
		Add a model
	</Button>
)
/** @param some whether any model stands on the shelf */
export function ListActs({ some }: { some: boolean }) {
	const { run, says } = useHostAction()
	const download = () =>
		run(async () => {
			const { csv } = await call('shelf.exportCsv', {})
			// led by the mark by which spreadsheets know UTF-8
			saveText(`\uFEFF${csv}`, 'shelf.csv', 'text/csv;charset=utf-8')
			return ''
		})
	return (
		<>
			{some && <PrintButton what="this list" />}
			<Button variant="outlined" onClick={download}>
				{some ? 'Save as table (CSV)' : 'Save an empty table to fill in (CSV)'}
			</Button>
			<Button variant="outlined" onClick={() => navigate('/shelf/import')}>
				Import a table (CSV)
			</Button>
			{some && <AddModel />}
			<Trouble says={says} />
		</>
	)
}
