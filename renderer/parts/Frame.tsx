/**
 * The frame round every screen: name, clinic, way home, lock, warnings of the host, and the
 * standing caution.
 */
import { Alert, Box, Button, Chip, Link, Typography } from '@mui/material'
import type { ReactNode } from 'react'
import type { OutputOf } from '../../shared/contract.ts'
import { PrintHead } from './Print.tsx'

interface FrameProps {
	status: OutputOf<'session.status'> | undefined
	/** the ways in the head, for who works here */
	ways: readonly { title: string; to: string }[]
	lock: () => void
	trouble: string
	/** the page takes the whole width */
	wide: boolean
	children: ReactNode
}
const way = {
	display: 'inline-flex',
	alignItems: 'center',
	minHeight: 44,
	px: 1,
	fontWeight: 600,
	borderRadius: 1,
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
/** Name of the program, the clinic, and whether its players are invented. */
function Names({ status }: Pick<FrameProps, 'status'>) {
	return (
		<>
			<Typography
				component="span"
				sx={{
					fontSize: '1.25rem',
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
					color="textSecondary"
					sx={{ pl: 2, borderLeft: 1, borderColor: 'divider' }}
				>
					{status.clinicName}
				</Typography>
			)}
			{status?.person && (
				<Typography component="span" variant="body2" color="textSecondary">
					{status.person.name}, {status.person.role}
				</Typography>
			)}
			{status?.demo && (
				<Chip size="small" color="warning" variant="outlined" label="Demo: invented players" />
			)}
		</>
	)
}
function Ways({ ways, lock }: Pick<FrameProps, 'ways' | 'lock'>) {
	return (
		<Box
			component="nav"
			aria-label="Workstation"
			sx={{ display: 'flex', flexWrap: 'wrap', alignItems: 'center', gap: 0.5 }}
		>
			{ways.map(({ title, to }) => (
				<Link key={to} href={to} underline="hover" sx={way}>
					{title}
				</Link>
			))}
			<Button variant="outlined" onClick={lock}>
				Lock
			</Button>
		</Box>
	)
}
function Head({ status, ways, lock }: Omit<FrameProps, 'trouble' | 'children' | 'wide'>) {
	return (
		<Box
			component="header"
			sx={{
				bgcolor: 'background.paper',
				borderBottom: 1,
				borderColor: 'divider',
				borderTop: '4px solid',
				borderTopColor: 'primary.main',
				displayPrint: 'none',
			}}
		>
			<Box
				sx={{
					...edge,
					minHeight: 48,
					py: 0.25,
					display: 'flex',
					flexWrap: 'wrap',
					alignItems: 'center',
					columnGap: 2,
					rowGap: 0.5,
				}}
			>
				<Names status={status} />
				<Box sx={{ flexGrow: 1 }} />
				{status?.state === 'open' && <Ways ways={ways} lock={lock} />}
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
function Foot({ version }: { version: string | undefined }) {
	return (
		<Box component="footer" sx={{ borderTop: 1, borderColor: 'divider', displayPrint: 'none' }}>
			<Box
				sx={{
					...edge,
					py: 1.5,
					display: 'flex',
					flexWrap: 'wrap',
					justifyContent: 'space-between',
					gap: 1,
				}}
			>
				<Typography variant="body2" color="textSecondary">
					Suggestions for the registered practitioner. Check the basis; decide yourself.
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
export function Frame({ status, ways, lock, trouble, wide, children }: FrameProps) {
	return (
		<Box
			sx={{
				minHeight: '100vh',
				display: 'flex',
				flexDirection: 'column',
				'@media print': { display: 'block', minHeight: 0 },
			}}
		>
			<SkipToContent />
			<Head status={status} ways={ways} lock={lock} />
			<Box
				component="main"
				id="main"
				tabIndex={-1}
				sx={{
					...edge,
					maxWidth: wide ? edge.maxWidth : readingWidth,
					flexGrow: 1,
					py: wide ? 0 : 3,
					containerType: 'inline-size',
					'@media print': { containerType: 'normal', maxWidth: 'none', p: 0 },
				}}
			>
				<PrintHead clinicName={status?.clinicName} person={status?.person?.name} />
				<Warnings status={status} trouble={trouble} />
				{children}
			</Box>
			<Foot version={status?.version} />
		</Box>
	)
}
