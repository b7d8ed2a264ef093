/** Help without a network: how each measure is taken, the conditions, the terms, the shortcuts, what is new. */
import { Box, Typography } from '@mui/material'
import { useState } from 'react'
import { findConditions } from '../../../shared/engine/conditions/find.ts'
import { glossary } from '../../../shared/engine/words/words.ts'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { Field } from '../../parts/form.tsx'
import { MeasureHelpCard } from '../../parts/help/Help.tsx'
import { measureHelp } from '../../parts/help/topic.ts'
import { KeySheet } from '../../parts/KeySheet.tsx'
import { Page } from '../../parts/Page.tsx'
import { Panel } from '../../parts/panels.tsx'
import { useReading } from '../../query.ts'
import { ConditionsTold } from './ConditionsTold.tsx'
import { News } from './News.tsx'

const pages = [
	['measures', 'How to measure'],
	['conditions', 'Conditions'],
	['glossary', 'Glossary'],
	['keys', 'Shortcuts'],
	['news', 'What is new'],
] as const
const fits = (find: string, words: readonly string[]) =>
	words.join(' ').toLowerCase().includes(find.trim().toLowerCase())

function Measures({ find }: { find: string }) {
	// the errors shown are those of the clinic's protocol
	useReading('protocol in force', {}, ['protocol.get'], loadProtocol)
	return measuresThatFit(find).map(([key, help]) => (
		<Panel key={key} title={help.title}>
			<MeasureHelpCard help={help} />
		</Panel>
	))
}
const measuresThatFit = (find: string) =>
	measureHelp.filter(([, { title, position, steps }]) => fits(find, [title, position, ...steps]))
const termsThatFit = (find: string) =>
	glossary.filter(({ term, words }) => fits(find, [term, words]))

function Terms({ find }: { find: string }) {
	return (
		<Box
			component="dl"
			sx={{
				m: 0,
				maxWidth: '60rem',
				display: 'grid',
				gridTemplateColumns: { xs: '1fr', sm: 'max-content 1fr' },
				columnGap: 3,
				rowGap: 1,
			}}
		>
			{termsThatFit(find).map(({ term, words }) => [
				<Box component="dt" key={term} sx={{ fontWeight: 600 }}>
					{term}
				</Box>,
				<Box component="dd" key={`${term} words`} sx={{ m: 0 }}>
					{words}
				</Box>,
			])}
		</Box>
	)
}
/** What can be looked through: how to draw it, and how much of it fits. */
const looked = {
	measures: { Shown: Measures, count: (find: string) => measuresThatFit(find).length },
	conditions: { Shown: ConditionsTold, count: (find: string) => findConditions(find).length },
	glossary: { Shown: Terms, count: (find: string) => termsThatFit(find).length },
}
const isLooked = (page: string): page is keyof typeof looked => Object.hasOwn(looked, page)
function Finding({
	page,
	find,
	setFind,
}: {
	page: keyof typeof looked
	find: string
	setFind: (find: string) => void
}) {
	const { Shown, count } = looked[page]
	const found = count(find)
	return (
		<>
			<Box sx={{ maxWidth: 480 }}>
				<Field
					label="Find in help"
					value={find}
					set={setFind}
					optional
					hint={find ? `${found} found.` : ''}
				/>
			</Box>
			<Shown find={find} />
			{found === 0 ? <Typography role="status">Nothing found. Try another word.</Typography> : null}
		</>
	)
}
export function HelpScreen({ page }: { page: string | undefined }) {
	const now = pages.find(([name]) => name === page)?.[0] ?? 'measures'
	const [find, setFind] = useState('')
	return (
		<Page
			title="Help"
			room={{
				label: 'Help',
				pages: pages.map(([name, title]) => ({ to: `#/help/${name}`, title, here: name === now })),
			}}
		>
			{now === 'keys' ? <KeySheet /> : null}
			{now === 'news' ? <News /> : null}
			{isLooked(now) ? <Finding page={now} find={find} setFind={setFind} /> : null}
		</Page>
	)
}
