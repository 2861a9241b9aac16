/*
 * Stands in for a library of Windows that wine 8 does not have; Rust's standard library takes the seeds of its hash tables
 * from it. For tests under wine only: it is never shipped.
 */
#include <windows.h>

BOOLEAN NTAPI SystemFunction036(PVOID buffer, ULONG size);

__declspec(dllexport) BOOL WINAPI ProcessPrng(PBYTE buffer, SIZE_T size) {
  return SystemFunction036(buffer, (ULONG)size);
}
