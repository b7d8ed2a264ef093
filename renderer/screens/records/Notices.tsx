/** What the owner should hear of: told once, marked as seen, kept with who and when. */
import { Box, Button } from '@mui/material'
import { Answered } from '../../parts/Answered.tsx'
import { Outcome } from '../../parts/form.tsx'
import { Panel, Rows, Way } from '../../parts/panels.tsx'
import { change, useHost, useHostAction } from '../../query.ts'
import { noticeWords, seenWords, wayOf, whenWords } from './noticeWords.ts'

export function Notices() {
	const list = useHost('notices.list', {})
	const action = useHostAction()
	const seen = async (upTo: number) => {
		await change('notices.seen', { upTo })
		return 'Marked as seen. Who and when stands in the audit trail.'
	}
	return (
		<Answered of={list} what="the notices">
			{({ notices, upTo }) => (
				<Panel
					title="Notices"
					hint="Tries to get in, changes of who works here, keys, restores, papers sent in error, backups and the disk of this PC. Nothing of a player stands here."
				>
					{notices.some((notice) => !notice.seen) && (
						<Box>
							<Button
								variant="contained"
								disabled={action.busy}
								onClick={() => action.run(() => seen(upTo))}
							>
								I have seen all of these
							</Button>
						</Box>
					)}
					<Outcome of={action} />
					<Rows
						label="Notices"
						heads={['When', 'What', 'Seen by']}
						empty="Nothing to tell so far."
						rows={notices.map((notice, at) => {
							const way = wayOf[notice.what]
							return {
								key: `${notice.what} ${notice.last} ${at}`,
								cells: [
									whenWords(notice),
									<Box key="what" component="span" sx={{ fontWeight: notice.seen ? 400 : 600 }}>
										{noticeWords(notice)}. {way && <Way to={way[0]}>{way[1]}</Way>}
									</Box>,
									seenWords(notice),
								],
							}
						})}
					/>
				</Panel>
			)}
		</Answered>
	)
}
