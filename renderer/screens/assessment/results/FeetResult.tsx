import { Typography } from '@mui/material'
import type { ResultProps } from './resultProps.ts'

export function FeetResult({ assessment }: ResultProps) {
	return <Typography>{assessment.visitDate}</Typography>
}
