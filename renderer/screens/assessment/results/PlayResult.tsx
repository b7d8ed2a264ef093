import { Typography } from '@mui/material'
import type { ResultProps } from './resultProps.ts'

export function PlayResult({ assessment }: ResultProps) {
	return <Typography>{assessment.visitDate}</Typography>
}
