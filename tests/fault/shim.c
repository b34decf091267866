// Stands between a process and its disk and clock (LD_PRELOAD). It writes down what reaches the files below FAULT_ROOT,
// so that a power cut can be replayed, and makes calls fail or the clock jump as the byte and the number in FAULT_CONTROL say.
#define _GNU_SOURCE
#include <dlfcn.h>
#include <errno.h>
#include <fcntl.h>
#include <pthread.h>
#include <stdarg.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/mman.h>
#include <sys/stat.h>
#include <sys/syscall.h>
#include <sys/time.h>
#include <time.h>
#include <unistd.h>

#define MOST_FILES 4096

struct control {
  int32_t fail;      // what writes below the root fail with: an errno, or 0
  int32_t fail_sync; // the same for waiting on the disk
  int64_t clock_ms;  // what is added to the time of day
};

static struct control quiet;
static volatile struct control *control = &quiet;
static int log_fd = -1;
static const char *root;
static char *paths[MOST_FILES];
static pthread_mutex_t lock = PTHREAD_MUTEX_INITIALIZER;

__attribute__((constructor)) static void begin(void) {
  root = getenv("FAULT_ROOT");
  const char *log = getenv("FAULT_LOG");
  const char *said = getenv("FAULT_CONTROL");
  if (log) log_fd = syscall(SYS_openat, AT_FDCWD, log, O_WRONLY | O_CREAT | O_APPEND | O_CLOEXEC, 0600);
  if (said) {
    int fd = syscall(SYS_openat, AT_FDCWD, said, O_RDONLY | O_CLOEXEC);
    void *page = fd < 0 ? MAP_FAILED : mmap(NULL, sizeof quiet, PROT_READ, MAP_SHARED, fd, 0);
    if (page != MAP_FAILED) control = page;
  }
}

// One entry: kind, monotonic nanoseconds, offset, length of the path, length of the data; then both.
static void note(char kind, const char *path, int64_t offset, const void *data, uint32_t length) {
  if (log_fd < 0) return;
  struct timespec now;
  syscall(SYS_clock_gettime, CLOCK_MONOTONIC, &now);
  uint32_t path_length = strlen(path);
  uint64_t at = (uint64_t)now.tv_sec * 1000000000ull + now.tv_nsec;
  size_t size = 32 + path_length + length;
  char *entry = malloc(size);
  memset(entry, 0, 32);
  entry[0] = kind;
  memcpy(entry + 8, &at, 8);
  memcpy(entry + 16, &offset, 8);
  memcpy(entry + 24, &path_length, 4);
  memcpy(entry + 28, &length, 4);
  memcpy(entry + 32, path, path_length);
  if (length) memcpy(entry + 32 + path_length, data, length);
  syscall(SYS_write, log_fd, entry, size);
  free(entry);
}

static int below(const char *path) { return root && path && strncmp(path, root, strlen(root)) == 0; }

static void opened(int fd, const char *path, int flags) {
  if (fd < 0 || fd >= MOST_FILES) return;
  pthread_mutex_lock(&lock);
  free(paths[fd]);
  paths[fd] = below(path) ? strdup(path) : NULL;
  if (paths[fd] && (flags & O_TRUNC)) note('t', path, 0, NULL, 0);
  pthread_mutex_unlock(&lock);
}

static const char *path_of(int fd) { return fd >= 0 && fd < MOST_FILES ? paths[fd] : NULL; }

static int fails(const char *path) {
  if (!path || !control->fail) return 0;
  errno = control->fail;
  return 1;
}

#define OPEN(name)                                                            \
  int name(const char *path, int flags, ...) {                                \
    va_list rest;                                                             \
    va_start(rest, flags);                                                    \
    mode_t mode = (flags & (O_CREAT | O_TMPFILE)) ? va_arg(rest, mode_t) : 0; \
    va_end(rest);                                                             \
    if ((flags & O_CREAT) && below(path) && fails(path)) return -1;           \
    int fd = syscall(SYS_openat, AT_FDCWD, path, flags, mode);                \
    opened(fd, path, flags);                                                  \
    return fd;                                                                \
  }
OPEN(open)
OPEN(open64)

int close(int fd) {
  pthread_mutex_lock(&lock);
  if (fd >= 0 && fd < MOST_FILES) {
    free(paths[fd]);
    paths[fd] = NULL;
  }
  pthread_mutex_unlock(&lock);
  return syscall(SYS_close, fd);
}

// A write and its entry are one to all other threads: entries stand in the order in which the kernel was asked.
static ssize_t put(int fd, const void *data, size_t length, int64_t offset, int at) {
  const char *path = path_of(fd);
  if (!path) return at ? syscall(SYS_pwrite64, fd, data, length, offset) : syscall(SYS_write, fd, data, length);
  if (fails(path)) return -1;
  pthread_mutex_lock(&lock);
  if (!at) offset = lseek(fd, 0, SEEK_CUR);
  ssize_t done = at ? syscall(SYS_pwrite64, fd, data, length, offset) : syscall(SYS_write, fd, data, length);
  if (done > 0) note('w', path, offset, data, done);
  pthread_mutex_unlock(&lock);
  return done;
}
ssize_t write(int fd, const void *data, size_t length) { return put(fd, data, length, 0, 0); }
ssize_t pwrite(int fd, const void *data, size_t length, off_t offset) { return put(fd, data, length, offset, 1); }
ssize_t pwrite64(int fd, const void *data, size_t length, off64_t offset) { return put(fd, data, length, offset, 1); }

static int cut(int fd, int64_t length) {
  const char *path = path_of(fd);
  if (fails(path)) return -1;
  int done = syscall(SYS_ftruncate, fd, length);
  if (path && done == 0) note('t', path, length, NULL, 0);
  return done;
}
int ftruncate(int fd, off_t length) { return cut(fd, length); }
int ftruncate64(int fd, off64_t length) { return cut(fd, length); }

static int wait_for(int fd, long call) {
  const char *path = path_of(fd);
  if (path && control->fail_sync) {
    errno = control->fail_sync;
    return -1;
  }
  int done = syscall(call, fd);
  if (path && done == 0) note('s', path, 0, NULL, 0);
  return done;
}
int fsync(int fd) { return wait_for(fd, SYS_fsync); }
int fdatasync(int fd) { return wait_for(fd, SYS_fdatasync); }

int unlink(const char *path) {
  if (below(path) && fails(path)) return -1;
  int done = syscall(SYS_unlinkat, AT_FDCWD, path, 0);
  if (below(path) && done == 0) note('u', path, 0, NULL, 0);
  return done;
}

int rename(const char *from, const char *to) {
  if (below(to) && fails(to)) return -1;
  int done = syscall(SYS_renameat2, AT_FDCWD, from, AT_FDCWD, to, 0);
  if (below(to) && done == 0) note('r', from, 0, to, strlen(to));
  return done;
}

int clock_gettime(clockid_t clock, struct timespec *now) {
  int done = syscall(SYS_clock_gettime, clock, now);
  if (done == 0 && (clock == CLOCK_REALTIME || clock == CLOCK_REALTIME_COARSE)) {
    now->tv_sec += control->clock_ms / 1000;
  }
  return done;
}

int gettimeofday(struct timeval *now, void *zone) {
  struct timespec fine;
  clock_gettime(CLOCK_REALTIME, &fine);
  now->tv_sec = fine.tv_sec;
  now->tv_usec = fine.tv_nsec / 1000;
  (void)zone;
  return 0;
}
