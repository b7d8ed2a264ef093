/** A returned message, pasted or dropped: what it says of which item. */
import { Alert, Box, Button, Link, Typography } from '@mui/material'
import { useRef, useState } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import { Field, Trouble } from '../../parts/form.tsx'
import { Panel } from '../../parts/panels.tsx'
import { change, useHostAction } from '../../query.ts'

const hint =
	'Paste the whole returned message with its source, or drop or choose the saved file. A report of ' +
	'delivery is no proof of reading.'

/** The saved message by a chooser, for whom dragging does not serve. */
function SavedFile({ read }: { read: (file: File | undefined) => Promise<void> }) {
	const chooser = useRef<HTMLInputElement>(null)
	return (
		<Box>
			<Button variant="outlined" onClick={() => chooser.current?.click()}>
				Choose the saved file
			</Button>
			<input
				ref={chooser}
				hidden
				type="file"
				accept=".eml,.txt,message/rfc822,text/plain"
				aria-label="Saved message"
				onChange={({ target }) => {
					const [file] = target.files ?? []
					// the same file can be chosen again
					target.value = ''
					void read(file)
				}}
			/>
		</Box>
	)
}
export function Reports() {
	const [text, setText] = useState('')
	const [read, setRead] = useState<OutputOf<'outbox.readReport'>['read']>([])
	const action = useHostAction()
	const drop = async (file: File | undefined) => {
		if (file) setText(await file.text())
	}
	const readReport = () =>
		action.run(async () => {
			const answer = await change('outbox.readReport', { text })
			setRead(answer.read)
			setText('')
			return 'Read.'
		})
	const nothing = !text.trim()
	return (
		<Panel title="Delivery reports" hint={hint}>
			<Trouble says={action.says} />
			<Box
				onDragOver={(event) => event.preventDefault()}
				onDrop={(event) => {
					event.preventDefault()
					void drop(event.dataTransfer.files[0])
				}}
			>
				<Field label="Returned message" value={text} set={setText} rows={8} />
			</Box>
			<SavedFile read={drop} />
			<Box>
				<Button variant="contained" disabled={action.busy || nothing} onClick={readReport}>
					Read report
				</Button>
				{nothing && read.length === 0 && (
					<Typography component="span" variant="body2" color="textSecondary" sx={{ ml: 2 }}>
						Paste or drop a message first.
					</Typography>
				)}
			</Box>
			{read.map(({ itemId, address, says }) => (
				<Alert key={`${address} ${says}`} severity={itemId ? 'info' : 'warning'} role="status">
					{says} {itemId && <Link href={`#/outbox/item/${itemId}`}>Open it</Link>}
				</Alert>
			))}
		</Panel>
	)
}
