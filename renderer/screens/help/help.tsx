/** Help without a network: how each measure is taken, the terms, the shortcuts. */
import { Box, Paper, Stack, Typography } from '@mui/material'
import { useEffect, useState } from 'react'
import { loadProtocol } from '../../parts/clinicProtocol.ts'
import { Field } from '../../parts/form.tsx'
import { glossary } from '../../parts/help/glossary.table.ts'
import { MeasureHelpCard } from '../../parts/help/Help.tsx'
import { measureHelp } from '../../parts/help/measures.table.ts'
import { KeySheet } from '../../parts/Palette.tsx'
import { RoomNav } from '../../parts/RoomNav.tsx'

const pages = [
	['measures', 'How to measure'],
	['glossary', 'Glossary'],
	['keys', 'Shortcuts'],
] as const
export function HelpScreen({ page }: { page: string | undefined }) {
	const now = pages.find(([name]) => name === page)?.[0] ?? 'measures'
	const [find, setFind] = useState('')
	const [, setLoaded] = useState(false)
	// the errors shown are those of the clinic's protocol
	useEffect(() => {
		loadProtocol().then(
			() => setLoaded(true),
			() => {},
		)
	}, [])
	const fits = (...words: string[]) =>
		words.join(' ').toLowerCase().includes(find.trim().toLowerCase())
	const measures = Object.entries(measureHelp).filter(([, help]) =>
		fits(help.title, help.position, ...help.steps),
	)
	const terms = glossary.filter((one) => fits(...one))
	const found = now === 'measures' ? measures.length : terms.length
	return (
		<Stack spacing={3}>
			<Typography variant="h1">Help</Typography>
			<RoomNav
				label="Help"
				pages={pages.map(([name, title]) => ({ to: `#/help/${name}`, title, here: name === now }))}
			/>
			{now === 'keys' ? (
				<KeySheet />
			) : (
				<Box sx={{ maxWidth: 480 }}>
					<Field
						label="Find in help"
						value={find}
						set={setFind}
						optional
						hint={find ? `${found} found.` : ''}
					/>
				</Box>
			)}
			{now === 'measures'
				? measures.map(([key, help]) => (
						<Paper key={key} component="section" variant="outlined" sx={{ p: 2 }}>
							<Typography variant="h2" sx={{ mb: 1 }}>
								{help.title}
							</Typography>
							<MeasureHelpCard help={help} />
						</Paper>
					))
				: null}
			{now === 'glossary' ? (
				<Paper variant="outlined" sx={{ p: 2 }}>
					<Box
						component="dl"
						sx={{
							m: 0,
							display: 'grid',
							gridTemplateColumns: { xs: '1fr', sm: 'max-content 1fr' },
							columnGap: 3,
							rowGap: 1,
						}}
					>
						{terms.map(([term, words]) => [
							<Box component="dt" key={term} sx={{ fontWeight: 600 }}>
								{term}
							</Box>,
							<Box component="dd" key={`${term} words`} sx={{ m: 0 }}>
								{words}
							</Box>,
						])}
					</Box>
				</Paper>
			) : null}
			{now !== 'keys' && found === 0 ? (
				<Typography role="status">Nothing found. Try another word.</Typography>
			) : null}
		</Stack>
	)
}
