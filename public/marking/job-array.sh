#!/bin/sh
# A job array of eight shares for a queueing system that reads #SBATCH lines, one task a share:
#
#   sbatch --wait job-array.sh && sh merge.sh 8
#
# For a system that names the task otherwise, set TASK to its variable. HERE is the folder of these scripts (the present one
# if left out), SHARES the number of shares (8): the same as in --array and behind merge.sh.
#SBATCH --array=1-8
#SBATCH --cpus-per-task=2
#SBATCH --mem=2G
#SBATCH --time=01:00:00
#SBATCH --requeue
set -eu
TASK=${TASK:-${SLURM_ARRAY_TASK_ID:-${PBS_ARRAY_INDEX:-}}}
sh "${HERE:-.}/share.sh" "${TASK:?the number of this task is not known}" "${SHARES:-8}"
