import { Typography } from '@mui/material'
import type { ResultProps } from './resultProps.ts'

export function GrowthResult({ assessment }: ResultProps) {
	return <Typography>{assessment.visitDate}</Typography>
}
