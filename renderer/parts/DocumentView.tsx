/**
 * A document as elements: the same description that the PDF and the accessible page are made of.
 */
import { Box } from '@mui/material'
import { Fragment, type ReactNode, useMemo } from 'react'
import {
	type Block,
	type BlockOf,
	type ChartEntry,
	cellTexts,
	entriesOf,
	type LwDocument,
	type Tone,
} from '../../shared/engine/report/document.ts'
import { patternCss } from '../../shared/engine/report/html/style.ts'
import { logoUrl } from '../../shared/engine/report/logo.ts'
import { speakFrom } from '../../shared/engine/words/speak.ts'
import { Drawing } from './Drawing.tsx'

/** Paper is light whatever the screen's scheme. */
const paper = {
	bgcolor: '#fff',
	color: '#1d2726',
	p: 2.5,
	border: 1,
	borderColor: 'divider',
	borderRadius: 1,
	maxWidth: '46rem',
	fontSize: '0.9rem',
	lineHeight: 1.5,
	overflowWrap: 'anywhere',
	'& h3': { fontSize: '1.3rem', m: 0, mb: 1 },
	'& h4': { fontSize: '1.05rem', mt: 2, mb: 0.5, mx: 0, color: 'var(--report-colour)' },
	'& h5': { fontSize: '0.95rem', mt: 1.5, mb: 0.5, mx: 0 },
	'& p': { m: 0, mb: 1 },
	'& table': { borderCollapse: 'collapse', width: '100%', mb: 1.5 },
	'& caption, & figcaption, & .small, & dt': {
		color: '#56625f',
		fontSize: '0.8rem',
		textAlign: 'left',
	},
	'& th, & td': {
		textAlign: 'left',
		verticalAlign: 'top',
		p: '4px 6px',
		borderBottom: '1px solid #cfd6d2',
	},
	'& tbody th': { fontWeight: 400 },
	'& dl': {
		display: 'grid',
		gridTemplateColumns: 'auto 1fr',
		columnGap: 1.5,
		alignItems: 'baseline',
		m: 0,
		mb: 1,
	},
	'& ul, & ol': { m: 0, mb: 1, pl: 2.5 },
	'& .inline': { display: 'flex', flexWrap: 'wrap', columnGap: 2 },
	'& .inline > div': { display: 'flex', gap: 0.75, alignItems: 'baseline' },
	'& .clinic': { display: 'flex', gap: 1, alignItems: 'center' },
	'& dd': { m: 0 },
	'& figure': { m: 0, mb: 1.5 },
	'& img': { maxWidth: '100%' },
	'& .alert': { borderLeft: '4px solid #a3262a', bgcolor: '#fbeeec', p: 1.5, mb: 1.5 },
	'& .alert > :last-child': { mb: 0 },
	'& .large': { color: '#8d1f23', fontSize: '1.35rem', lineHeight: 1.2, fontWeight: 700 },
	'& .headline': { fontSize: '1.35rem', lineHeight: 1.2, fontWeight: 700, my: 1 },
	'& .facts': { gridTemplateColumns: 'fit-content(8rem) 1fr', rowGap: 0.5 },
	'& .boxed': { border: '1px solid var(--report-colour)', borderRadius: 1, p: 1.5, my: 1.5 },
	'& .boxed > h4': { mt: 0 },
	'& .boxed > dl': { mb: 0 },
	'& .boxed dd:first-of-type': { fontWeight: 700 },
	'@media (forced-colors: active)': {
		bgcolor: 'Canvas',
		'&&, && *': { color: 'CanvasText' },
		'& .alert': { bgcolor: 'Canvas' },
	},
} as const
/** The words of a row or an item do not change places while it is shown: its place is its name. */
const named = <T,>(list: readonly T[]): { key: string; item: T }[] =>
	list.map((item, at) => ({ key: `${at}`, item }))

function Table({
	caption,
	head,
	rows,
}: {
	caption: string
	head: readonly string[]
	rows: readonly (readonly ReactNode[])[]
}) {
	return (
		<table>
			<caption>{caption}</caption>
			<thead>
				<tr>
					{named(head).map(({ key, item }) =>
						item ? (
							<th key={key} scope="col">
								{item}
							</th>
						) : (
							<td key={key} />
						),
					)}
				</tr>
			</thead>
			<tbody>
				{named(rows).map(({ key, item: [first, ...rest] }) => (
					<tr key={key}>
						<th scope="row">{first}</th>
						{named(rest).map((cell) => (
							<td key={cell.key}>{cell.item}</td>
						))}
					</tr>
				))}
			</tbody>
		</table>
	)
}
const classOf: Record<Tone, string | undefined> = {
	body: undefined,
	small: 'small',
	strong: undefined,
	lead: undefined,
	headline: 'headline',
}
function Facts({ title, boxed, rows }: BlockOf<'facts'>) {
	return (
		<div className={boxed ? 'boxed' : undefined}>
			{title === undefined ? null : <h4>{title}</h4>}
			<dl className="facts">
				{named(rows).map(({ key, item }) => (
					<Fragment key={key}>
						<dt>{item.label}</dt>
						<dd>{item.text}</dd>
					</Fragment>
				))}
			</dl>
		</div>
	)
}
function BlockView({ block }: { block: Block }) {
	switch (block.kind) {
		case 'heading':
			if (block.newPage) return <h3>{block.text}</h3>
			return block.level === 2 ? <h5>{block.text}</h5> : <h4>{block.text}</h4>
		case 'text':
			return (
				<p className={classOf[block.tone ?? 'body']}>
					{block.tone === 'strong' || block.tone === 'lead' ? (
						<strong>{block.text}</strong>
					) : (
						block.text
					)}
				</p>
			)
		case 'list': {
			const items = named(block.items).map(({ key, item }) => <li key={key}>{item}</li>)
			return block.ordered ? <ol>{items}</ol> : <ul>{items}</ul>
		}
		case 'actions':
			return (
				<ol>
					{named(block.items).map(({ key, item }) => (
						<li key={key}>
							<strong>{item.what}</strong> {[item.when, item.who].filter(Boolean).join(', ')}
						</li>
					))}
				</ol>
			)
		case 'alert':
			return (
				<div className="alert">
					<p className={block.large ? 'large' : undefined}>
						<strong>{block.title}</strong>
					</p>
					{block.text === '' ? null : <p>{block.text}</p>}
				</div>
			)
		case 'facts':
			return <Facts {...block} />
		case 'table':
			return (
				<Table
					caption={block.caption}
					head={block.head}
					rows={block.rows.map((row) => block.head.map((_, at) => row[at] ?? ''))}
				/>
			)
		case 'chart':
			return (
				<Table
					caption={block.caption}
					head={block.head}
					rows={block.rows.map((row) =>
						row.map((cell) =>
							entriesOf(cell).map((entry) => (
								<ChartEntryView key={cellTexts(entry).join(' ')} entry={entry} />
							)),
						),
					)}
				/>
			)
		case 'figure':
		case 'true-size':
			return (
				<figure>
					<Drawing svg={block.svg} alternative={block.alternative} />
					<figcaption>{block.caption}</figcaption>
				</figure>
			)
		case 'signature':
			return (
				<p>
					<strong>{block.name}</strong>
					<br />
					{block.registration}
					<br />
					{block.date}
				</p>
			)
	}
}
/** Clinic, title and whom it is about, over the blocks. */
function Head({ document }: { document: LwDocument }) {
	const t = speakFrom()
	const { clinicName, address, logo } = document.letterhead
	const mark = useMemo(() => logoUrl(logo), [logo])
	return (
		<>
			<p className="clinic">
				{mark ? <img src={mark} alt="" width={28} height={28} /> : null}
				<strong>{clinicName}</strong> <span className="small">{address.join(', ')}</span>
			</p>
			<h3>{document.title}</h3>
			{document.draft && !document.slim ? (
				<p>
					<strong>{t('page.draftMark')}</strong>
				</p>
			) : null}
			<dl className={document.slim ? 'inline' : undefined}>
				{document.subject.map(([label, value]) =>
					document.slim ? (
						<div key={label}>
							<dt>{label}</dt>
							<dd>{value}</dd>
						</div>
					) : (
						<Fragment key={label}>
							<dt>{label}</dt>
							<dd>{value}</dd>
						</Fragment>
					),
				)}
			</dl>
		</>
	)
}
/** From the first page break of its own on; nothing of a document of one page. */
const followingOf = ({ blocks }: LwDocument): Block[] => {
	const at = blocks.findIndex((block) => block.kind === 'heading' && block.newPage)
	return at < 0 ? [] : blocks.slice(at)
}
interface DocumentViewProps {
	document: LwDocument
	/** Only the pages after the first. */
	following?: boolean
}
export function DocumentView({ document, following = false }: DocumentViewProps) {
	const t = speakFrom()
	const { colour } = document.letterhead
	const blocks = following ? followingOf(document) : document.blocks
	return (
		<Box component="article" lang={document.language} sx={{ ...paper, '--report-colour': colour }}>
			{following ? null : <Head document={document} />}
			{named(blocks).map(({ key, item }) => (
				<BlockView key={key} block={item} />
			))}
			{document.notes.length > 0 ? (
				<>
					<h4>{t('page.notes')}</h4>
					<ol className="small">
						{named(document.notes).map(({ key, item }) => (
							<li key={key}>{item}</li>
						))}
					</ol>
				</>
			) : null}
			<p className="small">{document.footer}</p>
		</Box>
	)
}

/** What is worn in one session of the wall chart. */
function ChartEntryView({ entry }: { entry: ChartEntry }) {
	const { text, after, beside, below, pattern } = entry
	return (
		<span
			style={pattern ? { display: 'block', background: patternCss[pattern] } : { display: 'block' }}
		>
			<strong>{[text, after].filter(Boolean).join(' ')}</strong> {beside} {below}
		</span>
	)
}
