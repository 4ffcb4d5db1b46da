#!/bin/bash
# Makes the demo's recorded reading again from lesson-1.reading.txt: lesson-1.wav and lesson-1.reading.json beside it.
# Needs flite (voice rms) and sox. The same versions of both give the same file.
set -euo pipefail
cd "$(dirname "$0")"
work=$(mktemp -d)
trap 'rm -rf "$work"' EXIT
rate=16000
ear=$(mktemp -p "$work" XXXX.wav)

# Fixed seed and no dither, or no two runs would give the same file.
sox() { command sox -R -D "$@"; }

silence() { sox -n -r $rate -b 16 -c 1 "$2" trim 0 "$1"; }

silence 0.6 "$work/000.wav"
parts=("$work/000.wav")
samples=$(soxi -s "$work/000.wav")
rows=()
n=0
while IFS='|' read -r pause line event words; do
    case $pause in '' | '#'*) continue ;; esac
    n=$((n + 1))
    speech=$(printf '%s/%03d-speech.wav' "$work" "$n")
    gap=$(printf '%s/%03d-gap.wav' "$work" "$n")
    flite -voice rms -t "$words" -o "$ear"
    # Cut flite's own leading and trailing silence: the pauses are those written down.
    sox "$ear" -r $rate -c 1 -b 16 "$speech" \
        silence 1 0.01 0.5% fade t 0.005 reverse silence 1 0.01 0.5% fade t 0.005 reverse
    silence "$pause" "$gap"
    parts+=("$speech" "$gap")
    length=$(soxi -s "$speech")
    rows+=("$(LC_ALL=C awk -v s="$samples" -v l="$length" -v r=$rate -v line="$line" -v e="$event" -v w="$words" \
        'BEGIN { printf "{\"start\": %.2f, \"end\": %.2f, \"line\": %d, \"event\": \"%s\", \"spoken\": \"%s\"}",
                 s / r, (s + l) / r, line, e, w }')")
    samples=$((samples + length + $(soxi -s "$gap")))
done < lesson-1.reading.txt

sox "${parts[@]}" "$work/dry.wav" gain -n -6
# A quiet room: brown noise far below the voice.
sox -n -r $rate -c 1 -b 16 "$work/room.wav" synth "$(soxi -D "$work/dry.wav")" brownnoise gain -n -56
sox -m -v 1 "$work/dry.wav" -v 1 "$work/room.wav" -b 16 -e signed-integer lesson-1.wav

{
    printf '{\n  "script": "lesson-1.md",\n  "recording": "lesson-1.wav",\n  "utterances": [\n'
    for i in "${!rows[@]}"; do
        printf '    %s%s\n' "${rows[$i]}" "$([ "$i" -lt $((${#rows[@]} - 1)) ] && echo ,)"
    done
    printf '  ]\n}\n'
} > lesson-1.reading.json
