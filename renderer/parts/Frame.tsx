/**
 * The frame round every screen: one slim line with name, clinic, ways, who works here and lock; the
 * warnings of the host, and the standing caution.
 */
import { Alert, Box, Button, Chip, Link, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import type { OutputOf } from '../../shared/contract.ts'
import { PrintHead } from './Print.tsx'
import { spokenOnly } from './spokenOnly.ts'

interface FrameProps {
	status: OutputOf<'session.status'> | undefined
	/** the ways in the head, for who works here */
	ways: readonly { title: string; to: string }[]
	lock: () => void
	/** another person takes over, and the key that does it */
	handOver: { open: () => void; keys: string }
	trouble: string
	/** the first part of the address: its way is marked */
	here: string
	/** the page takes the whole width */
	wide: boolean
	/** the page fits itself to the window and scrolls within */
	fits: boolean
	children: ReactNode
}
/** Above this width, by the letters in use, the top line is one row. */
const oneRow = '@container (min-width: 76rem)'
/** Where one row has no room for all of its words. */
const close = '@container (min-width: 76rem) and (max-width: 100rem)'
/** Where it has no room for the space between them either. */
const tight = '@container (min-width: 76rem) and (max-width: 86rem)'
const way = {
	display: 'inline-flex',
	alignItems: 'center',
	minHeight: 44,
	px: 1,
	fontSize: '0.95rem',
	fontWeight: 600,
	whiteSpace: 'nowrap',
	borderBottom: 3,
	borderColor: 'transparent',
	'&[aria-current]': { color: 'text.primary', borderColor: 'primary.main' },
	[tight]: { px: 0.5 },
}
const edge = { width: '100%', maxWidth: 1880, mx: 'auto', px: { xs: 2, sm: 3 } }
/** What is read keeps lines that the eye can follow; a page that is worked in takes the window. */
const readingWidth = 1400

/** A button, since a link would change the address that names the page. */
function SkipToContent() {
	return (
		<Box
			component="button"
			type="button"
			onClick={() => document.getElementById('main')?.focus()}
			sx={{
				position: 'absolute',
				left: 12,
				top: -80,
				zIndex: 10,
				px: 2,
				minHeight: 44,
				font: 'inherit',
				border: 0,
				borderRadius: 1,
				bgcolor: 'primary.main',
				color: 'primary.contrastText',
				'&:focus': { top: 8 },
			}}
		>
			Skip to the content
		</Box>
	)
}
/** Where a row has room for some three words. */
const handheld = '@container (max-width: 30rem)'
/** A name of any length gives way to what has to be pressed; it can still be read whole. */
const givesWay = {
	minWidth: 0,
	[oneRow]: { overflow: 'hidden', textOverflow: 'ellipsis', whiteSpace: 'nowrap' },
}
/** Name of the program, the clinic, and whether its players are invented. */
function Names({ status }: Pick<FrameProps, 'status'>) {
	return (
		<>
			<Typography
				component="span"
				sx={{
					fontSize: '1.2rem',
					fontWeight: 700,
					color: 'primary.main',
					letterSpacing: '-0.01em',
				}}
			>
				Lastwright
			</Typography>
			{status?.clinicName && (
				<Typography
					component="span"
					variant="body2"
					color="textSecondary"
					title={status.clinicName}
					sx={{ pl: 1.5, borderLeft: 1, borderColor: 'divider', flex: '0 4 auto', ...givesWay }}
				>
					{status.clinicName}
				</Typography>
			)}
			{status?.demo && (
				<Chip
					size="small"
					color="warning"
					variant="outlined"
					sx={{ flexShrink: 0 }}
					label={
						<>
							Demo
							<Box component="span" sx={{ [close]: spokenOnly }}>
								: invented players
							</Box>
						</>
					}
				/>
			)}
		</>
	)
}
function Ways({ ways, here }: Pick<FrameProps, 'ways' | 'here'>) {
	return (
		<Box
			component="nav"
			aria-label="Workstation"
			sx={{
				display: 'flex',
				flexWrap: 'wrap',
				alignItems: 'center',
				[oneRow]: { flexWrap: 'nowrap' },
			}}
		>
			{ways.map(({ title, to }) => (
				<Link
					key={to}
					href={to}
					underline="hover"
					aria-current={to === `#/${here}` ? 'page' : undefined}
					sx={way}
				>
					{title}
				</Link>
			))}
		</Box>
	)
}
const inHead = { px: 1, flexShrink: 0, whiteSpace: 'nowrap' } as const

/** What waits for the owner to be read, said quietly until it is marked as seen. */
function Notices({ count }: { count: number | undefined }) {
	if (count === undefined) return null
	return (
		<Link href="#/records/notices" underline="hover" sx={{ ...way, color: 'warning.main' }}>
			{count === 1 ? '1 notice' : `${count} notices`}
		</Link>
	)
}
/** Who works here, the ways to hand over and to lock. */
function Working({ status, lock, handOver }: Pick<FrameProps, 'status' | 'lock' | 'handOver'>) {
	return (
		<>
			<Notices count={status?.told?.notices} />
			{status?.person && (
				<Typography
					component="span"
					variant="body2"
					title={`${status.person.name}, ${status.person.role}`}
					sx={{ display: 'flex', flex: '0 1 auto', minWidth: 0, [oneRow]: { minWidth: '9rem' } }}
				>
					<Box component="span" sx={givesWay}>
						{status.person.name}
					</Box>
					<Box component="span" sx={{ flex: 'none', whiteSpace: 'pre' }}>
						{`, ${status.person.role}`}
					</Box>
				</Typography>
			)}
			<Button
				variant="text"
				onClick={handOver.open}
				aria-keyshortcuts={handOver.keys}
				title={`Another person takes over (${handOver.keys})`}
				sx={inHead}
			>
				Hand over
				<Box
					component="kbd"
					aria-hidden
					sx={{
						ml: 0.75,
						font: 'inherit',
						[tight]: { display: 'none' },
						[handheld]: { display: 'none' },
					}}
				>
					{handOver.keys}
				</Box>
			</Button>
			<Button variant="text" onClick={lock} sx={inHead}>
				Lock
			</Button>
		</>
	)
}
/** Who works here stays in sight while a page scrolls, where the line is one row. */
const keepsInSight = { [oneRow]: { position: 'sticky', top: 0, zIndex: 5 } } as const

function Head({
	status,
	ways,
	here,
	stays,
	...working
}: Pick<FrameProps, 'status' | 'ways' | 'here' | 'lock' | 'handOver'> & { stays: boolean }) {
	const open = status?.state === 'open'
	return (
		<Box
			component="header"
			sx={{
				bgcolor: 'background.paper',
				borderBottom: 1,
				borderColor: 'divider',
				borderTop: '3px solid',
				borderTopColor: 'primary.main',
				displayPrint: 'none',
				containerType: 'inline-size',
				...(stays && keepsInSight),
			}}
		>
			<Box
				sx={{
					...edge,
					minHeight: 44,
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'center',
					columnGap: 1.5,
					[oneRow]: { flexWrap: 'nowrap' },
				}}
			>
				<Names status={status} />
				<Box sx={{ flexGrow: 1 }} />
				{open && <Ways ways={ways} here={here} />}
				{open && <Working status={status} {...working} />}
			</Box>
		</Box>
	)
}
/** What the host warns of, and why it does not answer. */
function Warnings({ status, trouble }: Pick<FrameProps, 'status' | 'trouble'>) {
	return (
		<Box sx={{ displayPrint: 'none', display: 'grid', gap: 1, '&:not(:empty)': { mb: 2 } }}>
			{trouble && (
				<Alert severity="error" role="alert">
					{trouble}
				</Alert>
			)}
			{status?.warnings.map((warning) => (
				<Alert key={warning} severity="warning" role="alert">
					{warning}
				</Alert>
			))}
		</Box>
	)
}
function Foot({ version, fits }: { version: string | undefined; fits: boolean }) {
	return (
		<Box component="footer" sx={{ borderTop: 1, borderColor: 'divider', displayPrint: 'none' }}>
			<Box
				sx={{
					...edge,
					py: fits ? 0.5 : 1.5,
					display: 'flex',
					flexWrap: 'wrap',
					justifyContent: 'space-between',
					gap: 1,
				}}
			>
				<Typography variant="body2" color="textSecondary">
					Proposals for the registered practitioner. Check the basis; decide yourself.
				</Typography>
				{version !== undefined && (
					<Typography variant="body2" color="textSecondary">
						Version {version}
					</Typography>
				)}
			</Box>
		</Box>
	)
}
export function Frame({ trouble, wide, fits, children, ...head }: FrameProps) {
	const { status } = head
	return (
		<Box
			sx={{
				// what fits itself to the window takes off the top line
				'--frame-head': '3rem',
				minHeight: '100vh',
				display: 'flex',
				flexDirection: 'column',
				containerType: 'inline-size',
				'@media print': { display: 'block', minHeight: 0, containerType: 'normal' },
			}}
		>
			<SkipToContent />
			<Head {...head} stays={!fits} />
			<Box
				component="main"
				id="main"
				tabIndex={-1}
				sx={{
					...edge,
					maxWidth: wide ? edge.maxWidth : readingWidth,
					flexGrow: 1,
					py: fits ? 0 : 3,
					containerType: 'inline-size',
					// what sticks or is scrolled to stays below the line that stays
					...(!fits && { [oneRow]: { '--frame-stays': '3rem' } }),
					'@media print': { containerType: 'normal', maxWidth: 'none', p: 0 },
				}}
			>
				<PrintHead clinicName={status?.clinicName} person={status?.person?.name} />
				<Warnings status={status} trouble={trouble} />
				{children}
			</Box>
			<Foot version={status?.version} fits={fits} />
		</Box>
	)
}
