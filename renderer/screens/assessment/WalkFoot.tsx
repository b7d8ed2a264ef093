/** What the step on screen still lacks, in short names, and the way on; it stays in sight. */
import { Box, Button, Typography } from '@mui/material'
import { useState } from 'react'
import { type Lack, shortNames } from './missingWords.ts'
import { narrow } from './narrow.ts'
import { numberOf, type Step } from './steps.ts'

interface WalkFootProps {
	/** What the step lacks; undefined where it asks for nothing. */
	lacks: readonly Lack[] | undefined
	next: Step | undefined
	/** On to the next step, its first field in hand. */
	goOn: () => void
	/** The step on screen: Enter walks its fields, and on the last one goes on. */
	step: Step
	/** Something is still to be answered, which Alt+N finds. */
	finds: boolean
	/** The focus goes to a field that is missing. */
	toField: (path: string) => void
}
const separator = ' \u00b7 '
const isOfTwoSides = ({ groups }: Step): boolean =>
	groups.some(({ fields }) => fields.some(({ paths }) => paths.length === 2))
/** So many are named; the rest is counted and one press away. */
const mostNamed = 4

export function WalkFoot({ lacks, step, next, goOn, finds, toField }: WalkFootProps) {
	return (
		<Box
			sx={{
				position: 'sticky',
				bottom: 0,
				zIndex: 3,
				height: 'var(--walk-foot)',
				display: 'flex',
				alignItems: 'center',
				gap: 2,
				bgcolor: 'background.default',
				borderTop: 1,
				borderColor: 'divider',
				[narrow]: { position: 'static', height: 'auto', flexWrap: 'wrap', py: 1 },
			}}
		>
			<Box sx={{ flex: '1 1 0', minWidth: 'min(16rem, 100%)', position: 'relative' }}>
				{lacks && <Missing lacks={lacks} toField={toField} />}
			</Box>
			<Typography variant="body2" color="text.secondary" aria-hidden sx={{ flex: 'none' }}>
				{[
					...(step.groups.length > 0 ? ['Enter: next field'] : []),
					...(isOfTwoSides(step) ? ['=: as the other side'] : []),
					...(finds ? ['Alt+N: next open'] : []),
					...(next ? [`Alt+${numberOf(next.name)}`] : []),
				].join(separator)}
			</Typography>
			{next && (
				<Button variant="contained" data-on="" onClick={goOn}>
					On to {next.name}
				</Button>
			)}
		</Box>
	)
}
function Missing({ lacks, toField }: { lacks: readonly Lack[] } & Pick<WalkFootProps, 'toField'>) {
	const [open, setOpen] = useState(false)
	const said = foot(lacks)
	if (lacks.length === 0)
		return (
			<Typography role="status" variant="body2" color="text.secondary">
				{said}
			</Typography>
		)
	return (
		<>
			{open && (
				<Whole
					lacks={lacks}
					toField={(path) => {
						setOpen(false)
						toField(path)
					}}
				/>
			)}
			<Box role="status" sx={{ display: 'flex' }}>
				<Button
					size="small"
					color="inherit"
					aria-expanded={open}
					aria-keyshortcuts="Alt+L"
					onClick={() => setOpen(!open)}
					sx={{ px: 1, mx: -1, fontWeight: 400, textAlign: 'left', minWidth: 0 }}
				>
					{said}
				</Button>
			</Box>
		</>
	)
}
/** Above the foot, so that nothing moves: each name leads to its field. */
function Whole({ lacks, toField }: { lacks: readonly Lack[] } & Pick<WalkFootProps, 'toField'>) {
	return (
		<Box
			component="section"
			aria-label="All that is missing"
			sx={{
				position: 'absolute',
				bottom: '100%',
				left: -8,
				maxHeight: '50vh',
				overflow: 'auto',
				minWidth: '18rem',
				bgcolor: 'background.paper',
				border: 1,
				borderColor: 'text.secondary',
				borderRadius: 1,
				mb: 1,
				[narrow]: { position: 'static' },
			}}
		>
			<Box component="ul" sx={{ m: 0, p: 0.5, listStyle: 'none' }}>
				{lacks.map(({ path, name, unread }) => (
					<li key={path}>
						<Button
							size="small"
							color={unread ? 'error' : 'inherit'}
							onClick={() => toField(path)}
							sx={{ px: 1, width: '100%', justifyContent: 'start' }}
						>
							{unread ? `${name}: not a value yet` : name}
						</Button>
					</li>
				))}
			</Box>
		</Box>
	)
}
function foot(lacks: readonly Lack[]): string {
	if (lacks.length === 0) return 'Nothing missing'
	const unread = shortNames(lacks.filter((lack) => lack.unread))
	const missing = shortNames(lacks.filter((lack) => !lack.unread))
	return [listOf('Not a value yet', unread), listOf('Missing', missing)].filter(Boolean).join('. ')
}
function listOf(head: string, names: readonly string[]): string {
	if (names.length === 0) return ''
	const more = names.length > mostNamed ? ` +${names.length - mostNamed}` : ''
	return `${head}: ${names.slice(0, mostNamed).join('; ')}${more}`
}
