#include <errno.h>
#include <fcntl.h>
#include <stdio.h>
#include <sys/file.h>
#include <sys/stat.h>
#include <unistd.h>

#include "source/internal.h"

static int real_open(const char *path, int flags, unsigned mode)
{
    return open(path, flags, (mode_t)mode);
}

static long real_read(int fd, void *bytes, size_t count)
{
    return read(fd, bytes, count);
}

static long real_write(int fd, const void *bytes, size_t count)
{
    return write(fd, bytes, count);
}

static int real_fchown(int fd, unsigned owner, unsigned group)
{
    return fchown(fd, (uid_t)owner, (gid_t)group);
}

static int real_fchmod(int fd, unsigned mode)
{
    return fchmod(fd, (mode_t)mode);
}

static const sw_system real_system = {
    .open = real_open,
    .read = real_read,
    .write = real_write,
    .fchown = real_fchown,
    .fchmod = real_fchmod,
    .fsync = fsync,
    .flock = flock,
    .close = close,
    .link = link,
    .rename = rename,
    .unlink = unlink,
};

static const sw_system *calls = &real_system;

void sw_system_use(const sw_system *system)
{
    calls = system == NULL ? &real_system : system;
}

const sw_system *sw_system_calls(void)
{
    return calls;
}

long sw_system_read(int fd, void *bytes, size_t count)
{
    long got;
    do {
        got = calls->read(fd, bytes, count);
    } while (got < 0 && errno == EINTR);
    return got;
}

bool sw_system_write_all(int fd, sw_slice bytes)
{
    while (bytes.length > 0) {
        long done = calls->write(fd, bytes.data, bytes.length);
        if (done < 0 && errno == EINTR) {
            continue;
        }
        if (done == 0) {
            errno = ENOSPC; /* no progress and no reason: would loop for ever */
        }
        if (done <= 0) {
            return false;
        }
        bytes.data += done;
        bytes.length -= (size_t)done;
    }
    return true;
}

bool sw_system_sync(int fd)
{
    int result;
    do {
        result = calls->fsync(fd);
    } while (result != 0 && errno == EINTR);
    return result == 0;
}

bool sw_system_close(int fd)
{
    return calls->close(fd) == 0 || errno == EINTR;
}
