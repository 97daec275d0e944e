/* Loaded before the C library in fault runs: the disk obeys files in the folder $FAULTS.
   fail   syncing a database or its journal fails with EIO
   kill   the process is killed right after the next sync of a journal has succeeded
   copy   what a sync has made safe is kept beside the file as FILE.synced, as a power cut would leave it
   lazy   syncing a journal does nothing and says that it did, as synchronous=NORMAL would have it */
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <signal.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/sendfile.h>
#include <sys/stat.h>
#include <unistd.h>

static int flag(const char *name) {
  char path[600];
  const char *folder = getenv("FAULTS");
  if (!folder) return 0;
  snprintf(path, sizeof path, "%s/%s", folder, name);
  return access(path, F_OK) == 0;
}

static void keep(int fd, const char *name) {
  char copy[600], part[620];
  struct stat size;
  off_t at = 0;
  snprintf(copy, sizeof copy, "%s.synced", name);
  snprintf(part, sizeof part, "%s.part", copy);
  int to = open(part, O_CREAT | O_TRUNC | O_WRONLY, 0600);
  int from = open(name, O_RDONLY);
  if (to >= 0 && from >= 0 && fstat(fd, &size) == 0) {
    while (at < size.st_size && sendfile(to, from, &at, size.st_size - at) > 0) {
    }
  }
  if (from >= 0) close(from);
  if (to >= 0) close(to);
  rename(part, copy);
}

static int sync_with(const char *call, int fd) {
  int (*real)(int) = (int (*)(int))dlsym(RTLD_NEXT, call);
  char link[64], name[512];
  snprintf(link, sizeof link, "/proc/self/fd/%d", fd);
  ssize_t length = readlink(link, name, sizeof name - 1);
  name[length > 0 ? length : 0] = 0;
  int journal = strstr(name, ".db-wal") != NULL;
  if (!journal && !strstr(name, ".db")) return real(fd);
  if (flag("fail")) {
    errno = EIO;
    return -1;
  }
  if (journal && flag("lazy")) return 0;
  int result = real(fd);
  if (result == 0 && flag("copy")) keep(fd, name);
  if (result == 0 && journal && flag("kill")) kill(getpid(), SIGKILL);
  return result;
}

int fsync(int fd) { return sync_with("fsync", fd); }
int fdatasync(int fd) { return sync_with("fdatasync", fd); }
