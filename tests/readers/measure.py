"""Runs a command and prints what it and all that it began have used, as JSON: exit, processor seconds, MB held at most, what was printed.
With MEASURED_SECONDS in the environment it may take so long, else 300."""
import json
import os
import resource
import subprocess
import sys

run = subprocess.run(sys.argv[1:], stdin=subprocess.DEVNULL, stdout=subprocess.PIPE, stderr=subprocess.PIPE, timeout=float(os.environ.get('MEASURED_SECONDS', 300)))
used = resource.getrusage(resource.RUSAGE_CHILDREN)
print(json.dumps({
    'exit': run.returncode,
    'seconds': used.ru_utime + used.ru_stime,
    # Linux counts in kB, of the one process that held most.
    'megabytes': used.ru_maxrss / 1000,
    'out': run.stdout.decode('utf8', 'replace'),
    'err': run.stderr.decode('utf8', 'replace'),
}))
