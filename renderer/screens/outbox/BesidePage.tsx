/** The first page of an item beside its recipient and player, and what can be done under them. */
import { Box, Stack } from '@mui/material'
import type { ReactNode } from 'react'
import type { OutputOf } from '../../../shared/contract.ts'
import type { OutboxView } from '../../../shared/desk/outbox/calls.ts'
import { kindWords } from '../../../shared/desk/outbox/item.ts'
import { dayInWords } from '../../parts/dates.ts'
import { Panel } from '../../parts/panels.tsx'
import { useFileUrl } from '../../parts/useFileUrl.ts'
import { ItemFacts } from './ItemFacts.tsx'

interface BesidePageProps {
	item: OutboxView
	/** undefined until the first page is opened */
	look: OutputOf<'outbox.look'> | undefined
	children: ReactNode
}
export function BesidePage({ item, look, children }: BesidePageProps) {
	return (
		<Box
			sx={{
				display: 'grid',
				gap: 2,
				gridTemplateColumns: { xs: '1fr', md: 'minmax(0, 3fr) minmax(320px, 2fr)' },
				alignItems: 'start',
			}}
		>
			<FirstPage item={item} base64={look?.base64} />
			<Stack spacing={2}>
				<ItemFacts item={item} look={look} />
				{children}
			</Stack>
		</Box>
	)
}
interface FirstPageProps {
	item: OutboxView
	base64: string | undefined
}
function FirstPage({ item, base64 }: FirstPageProps) {
	const url = useFileUrl(base64)
	const title = `First page of ${item.number}`
	return (
		<Panel
			title={title}
			hint={
				`${kindWords[item.kind]}, version ${item.version}, visit of ` +
				`${dayInWords(item.visitDate)}. These are the stored bytes.`
			}
		>
			{url && (
				<Box
					component="iframe"
					key={url}
					title={title}
					src={`${url}#page=1&toolbar=0&navpanes=0&view=FitH`}
					sx={{
						display: 'block',
						width: '100%',
						height: { xs: '60vh', md: '78vh' },
						border: 0,
						bgcolor: '#fff',
					}}
				/>
			)}
		</Panel>
	)
}
