/** The plan on paper and in a calendar. */
import { Box, Button, Paper, Typography } from '@mui/material'
import { useState } from 'react'
import type { InputOf } from '../../../shared/contract.ts'
import { call } from '../../host.ts'
import { saveText } from '../../parts/files.ts'
import { SavePage } from '../../parts/SavePage.tsx'
import { useFileUrl } from '../../parts/useFileUrl.ts'
import type { Told } from './useTold.ts'

interface Sheet {
	paper: InputOf<'season.chart'>['paper']
	button: string
	title: string
}
const sheets: readonly Sheet[] = [
	{ paper: 'A4', button: 'Wall chart', title: 'Wall chart' },
	{ paper: 'A3', button: 'Wall chart, large', title: 'Wall chart, large' },
	{ paper: 'pocket', button: 'Pocket table', title: 'Pocket table' },
]
/** A sheet that was made. */
interface Page extends Pick<Sheet, 'paper' | 'title'> {
	fileName: string
	base64: string
}

interface GiveOutProps {
	playerId: string
	/** Whether there is a plan that holds. */
	offered: boolean
	allSaved: () => Promise<void>
	told: Told
}
export function GiveOut({ playerId, offered, allSaved, told }: GiveOutProps) {
	const [page, setPage] = useState<Page>()
	const make = async (work: () => Promise<void>) => {
		told.clearTrouble()
		try {
			await allSaved()
			await work()
		} catch (error) {
			told.refuse(error)
		}
	}
	const show = ({ paper, title }: Sheet) =>
		make(async () => {
			const { base64, fileName } = await call('season.chart', { playerId, paper })
			setPage({ paper, title, fileName, base64 })
		})
	const calendar = () =>
		make(async () => {
			const { text, fileName } = await call('season.ics', { playerId })
			saveText(text, fileName, 'text/calendar')
			told.tell(`Saved ${fileName}: it names pairs by letter only.`)
		})
	return (
		<>
			{offered && (
				<Box role="group" aria-label="Give out" sx={{ display: 'flex', flexWrap: 'wrap', gap: 1 }}>
					{sheets.map((sheet) => (
						<Button key={sheet.paper} variant="outlined" onClick={() => void show(sheet)}>
							{sheet.button}
						</Button>
					))}
					<Button variant="outlined" onClick={() => void calendar()}>
						Save calendar (.ics)
					</Button>
				</Box>
			)}
			{page && <PageShown playerId={playerId} page={page} close={() => setPage(undefined)} />}
		</>
	)
}

interface PageShownProps {
	playerId: string
	page: Page
	close: () => void
}
function PageShown({ playerId, page, close }: PageShownProps) {
	const { paper, title, fileName, base64 } = page
	const url = useFileUrl(base64)
	return (
		<Paper variant="outlined" sx={{ p: 2 }}>
			<Box sx={{ display: 'flex', flexWrap: 'wrap', gap: 1, alignItems: 'center', mb: 1 }}>
				<Typography variant="h2" sx={{ flexGrow: 1 }}>
					{title}
				</Typography>
				<Button href={url} download={fileName}>
					Save PDF
				</Button>
				<SavePage ask={() => call('season.page', { playerId, paper })} />
				<Button onClick={close}>Close</Button>
			</Box>
			{url && (
				<Box
					component="iframe"
					title={title}
					src={url}
					sx={{ width: '100%', height: '75vh', border: 1, borderColor: 'divider' }}
				/>
			)}
		</Paper>
	)
}
