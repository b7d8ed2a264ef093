/** The table of models, each with what can be done with it. */
import { Box, Button, Table, TableBody, TableCell, TableHead, TableRow } from '@mui/material'
import { navigate } from 'wouter/use-hash-location'
import { type Model, offsetOf } from '../../../shared/engine/visit/shelf.ts'
import { termWords } from '../../../shared/engine/visit/terms.ts'
import { flush, scrollsX } from '../../parts/scrollsX.ts'
import { differingWords, featureWords, sizesWords } from './words.ts'

interface Column {
	head: string
	align?: 'left' | 'right'
	screenOnly?: boolean
}
const columns: readonly Column[] = [
	{ head: 'Name' },
	{ head: 'Sole' },
	{ head: 'Sizes' },
	{ head: 'Offset', align: 'right' },
	{ head: 'Features' },
	{ head: 'Price', align: 'right' },
	{ head: 'Actions', screenOnly: true },
]
interface ModelsProps {
	models: readonly Model[]
	/** Retires a model, or brings it back. */
	retire: (model: Model) => void
}
export function Models({ models, retire }: ModelsProps) {
	return (
		<Box sx={scrollsX} tabIndex={0} role="region" aria-label="Models">
			<Table size="small" aria-label="Models" sx={flush}>
				<TableHead>
					<TableRow>
						{columns.map(({ head, align = 'left', screenOnly }) => (
							<TableCell key={head} align={align} sx={screenOnly ? { displayPrint: 'none' } : {}}>
								{head}
							</TableCell>
						))}
					</TableRow>
				</TableHead>
				<TableBody>
					{models.map((model) => (
						<ModelRow key={model.id} model={model} retire={retire} />
					))}
				</TableBody>
			</Table>
		</Box>
	)
}

function ModelRow({ model, retire }: Pick<ModelsProps, 'retire'> & { model: Model }) {
	const { id, name, retired } = model
	const offsetMm = offsetOf(model)
	return (
		<TableRow sx={retired ? { '& td, & th': { color: 'text.secondary' } } : {}}>
			<TableCell component="th" scope="row" sx={{ fontWeight: 600, minWidth: 130 }}>
				{name}
				{retired ? ' (retired)' : ''}
			</TableCell>
			<TableCell>{termWords(model.sole)}</TableCell>
			<TableCell>
				{sizesWords(model)}
				<Box component="span" sx={{ display: 'block', color: 'text.secondary' }}>
					{differingWords(model)}
				</Box>
			</TableCell>
			<TableCell align="right" sx={{ whiteSpace: 'nowrap' }}>
				{offsetMm === undefined ? 'not recorded' : `${offsetMm} mm`}
			</TableCell>
			<TableCell sx={{ minWidth: 220 }}>{featureWords(model) || 'not recorded'}</TableCell>
			<TableCell align="right">{model.price ?? ''}</TableCell>
			<TableCell sx={{ whiteSpace: 'nowrap', py: 0, displayPrint: 'none' }}>
				<Act label="Edit" of={name} press={() => navigate(`/shelf/model/${id}`)} />
				<Act label="Copy" of={name} press={() => navigate(`/shelf/new/${id}`)} />
				<Act label={retired ? 'Bring back' : 'Retire'} of={name} press={() => retire(model)} />
			</TableCell>
		</TableRow>
	)
}
function Act({ label, of, press }: { label: string; of: string; press: () => void }) {
	return (
		<Button size="small" aria-label={`${label} ${of}`} onClick={press}>
			{label}
		</Button>
	)
}
