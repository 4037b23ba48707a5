console.error('usage: fitwright check FILE...');
process.exitCode = 2;
