/* Safe writing: all files or none, whatever fails and whenever. */
#include <dirent.h>
#include <errno.h>
#include <fcntl.h>
#include <ftw.h>
#include <setjmp.h>
#include <signal.h>
#include <stdarg.h>
#include <stddef.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>
#include <sys/file.h>
#include <sys/resource.h>
#include <sys/stat.h>
#include <sys/wait.h>
#include <unistd.h>

#include <cmocka.h>

#include "stavewright/source.h"

/* ---- system calls that go wrong on demand ----------------------------------------------------------- */

typedef enum fault_kind {
    FAULT_NONE,
    FAULT_ONCE,     /* the n-th call fails */
    FAULT_FROM,     /* the n-th call and all later ones fail */
    FAULT_RAISE,    /* a signal arrives at the n-th call */
    FAULT_MEANWHILE /* `meanwhile` happens before the n-th call */
} fault_kind;

static struct {
    fault_kind kind;
    int at;     /* n, from 1 */
    int number; /* errno or signal */
    void (*meanwhile)(void);
    size_t most;        /* bytes that one write takes; 0: all */
    int count;          /* calls so far */
    const char *failed; /* the name of the call that failed first */
    sw_buffer *log;     /* the names of the calls, when wanted */
} fault;

static bool call_fails(const char *name)
{
    fault.count++;
    if (fault.log != NULL) {
        sw_buffer_format(fault.log, "%s ", name);
    }
    bool now = fault.count == fault.at;
    if (now && fault.kind == FAULT_RAISE) {
        raise(fault.number);
    }
    if (now && fault.kind == FAULT_MEANWHILE) {
        fault.meanwhile();
    }
    if ((now && fault.kind == FAULT_ONCE) || (fault.count >= fault.at && fault.kind == FAULT_FROM)) {
        errno = fault.number;
        fault.failed = fault.failed == NULL ? name : fault.failed;
        return true;
    }
    return false;
}

static int faulty_open(const char *path, int flags, unsigned mode)
{
    return call_fails("open") ? -1 : open(path, flags, (mode_t)mode);
}

static long faulty_read(int fd, void *bytes, size_t count)
{
    return call_fails("read") ? -1 : read(fd, bytes, count);
}

static long faulty_write(int fd, const void *bytes, size_t count)
{
    if (call_fails("write")) {
        return -1;
    }
    return write(fd, bytes, fault.most > 0 && count > fault.most ? fault.most : count);
}

static int faulty_fchown(int fd, unsigned owner, unsigned group)
{
    return call_fails("fchown") ? -1 : fchown(fd, (uid_t)owner, (gid_t)group);
}

static int faulty_fchmod(int fd, unsigned mode)
{
    return call_fails("fchmod") ? -1 : fchmod(fd, (mode_t)mode);
}

static int faulty_fsync(int fd)
{
    (void)fd; /* no test takes the power away, and syncing thousands of files takes its time */
    return call_fails("fsync") ? -1 : 0;
}

static int faulty_flock(int fd, int operation)
{
    return call_fails("flock") ? -1 : flock(fd, operation);
}

static int faulty_close(int fd)
{
    bool fails = call_fails("close");
    int number = errno;
    int result = close(fd); /* also a close that reports an error closes */
    errno = fails ? number : errno;
    return fails ? -1 : result;
}

static bool without_links; /* as on a file system that knows no hard links */

static int faulty_link(const char *from, const char *to)
{
    if (call_fails("link")) {
        return -1;
    }
    if (without_links) {
        errno = EPERM;
        return -1;
    }
    return link(from, to);
}

static int faulty_rename(const char *from, const char *to)
{
    return call_fails("rename") ? -1 : rename(from, to);
}

static int faulty_unlink(const char *path)
{
    bool fails = call_fails("unlink");
    return fails ? -1 : unlink(path);
}

static const sw_system faulty_system = {
    .open = faulty_open,
    .read = faulty_read,
    .write = faulty_write,
    .fchown = faulty_fchown,
    .fchmod = faulty_fchmod,
    .fsync = faulty_fsync,
    .flock = faulty_flock,
    .close = faulty_close,
    .link = faulty_link,
    .rename = faulty_rename,
    .unlink = faulty_unlink,
};

static void use_fault(fault_kind kind, int at, int number)
{
    memset(&fault, 0, sizeof fault);
    fault.kind = kind;
    fault.at = at;
    fault.number = number;
    sw_system_use(&faulty_system);
}

/* ---- a folder with files
 * ------------------------------------------------------------------------------------ */

static char folder[256];

static void run(const char *format, ...) __attribute__((format(printf, 1, 2)));
static void run(const char *format, ...)
{
    char command[2048];
    va_list arguments;
    va_start(arguments, format);
    vsnprintf(command, sizeof command, format, arguments);
    va_end(arguments);
    assert_int_equal(system(command), 0);
}

static int make_folder(void **state)
{
    (void)state;
    const char *parent =
        access("/dev/shm", W_OK) == 0 ? "/dev/shm" : getenv("TMPDIR"); /* thousands of syncs */
    snprintf(folder, sizeof folder, "%s/write-test-XXXXXX", parent == NULL ? "/tmp" : parent);
    return mkdtemp(folder) == NULL || chdir(folder) != 0 ? -1 : 0;
}

static int remove_folder(void **state)
{
    (void)state;
    return chdir("/") != 0 || (run("rm -rf '%s'", folder), 0);
}

static void put_file(const char *name, const char *bytes)
{
    FILE *file = fopen(name, "wb");
    assert_non_null(file);
    assert_int_equal(fputs(bytes, file) < 0, 0);
    assert_int_equal(fclose(file), 0);
}

/* The bytes of a file; NULL when there is none. Valid until the next call. */
static const char *get_file(const char *name)
{
    static char bytes[100000];
    FILE *file = fopen(name, "rb");
    if (file == NULL) {
        return NULL;
    }
    size_t length = fread(bytes, 1, sizeof bytes - 1, file);
    fclose(file);
    bytes[length] = '\0';
    return bytes;
}

/* Four files: two there already, one reached through a symbolic link, one to be created. */
enum { FILES = 4 };
static const char *const names[FILES] = {"one.ly", "parts/two.ly", "link.ly", "parts/new.ly"};
static const char *const real_names[FILES] = {"one.ly", "parts/two.ly", "hidden/three.ly", "parts/new.ly"};
static const char *const old_bytes[FILES] = {"{ c4 }\n", "{ d4 }\r\n", "", NULL};
static char new_bytes[FILES][40000]; /* the third does not fit one block of reading */

static int remove_entry(const char *path, const struct stat *status, int kind, struct FTW *position)
{
    (void)status;
    (void)kind;
    return position->level == 0 ? 0 : remove(path);
}

static void set_up_files(void)
{
    sw_system_use(NULL);
    assert_int_equal(nftw(".", remove_entry, 16, FTW_DEPTH | FTW_PHYS), 0);
    assert_int_equal(mkdir("parts", 0777), 0);
    assert_int_equal(mkdir("hidden", 0777), 0);
    assert_int_equal(symlink("hidden", "link-1"), 0);
    assert_int_equal(symlink("link-1/three.ly", "link.ly"), 0);
    for (int i = 0; i < FILES; i++) {
        if (old_bytes[i] != NULL) {
            put_file(real_names[i], old_bytes[i]);
        }
        snprintf(new_bytes[i], sizeof new_bytes[i], "{ new %d", i);
        size_t length = strlen(new_bytes[i]);
        size_t wanted = i == 2 ? sizeof new_bytes[i] - 1 : length + 3;
        memset(new_bytes[i] + length, 'x', wanted - length);
        new_bytes[i][wanted] = '\0';
    }
}

typedef struct change {
    sw_text *texts[FILES];
    sw_write writes[FILES];
} change;

/* With the real system calls: reads the files and says what they are to become. */
static change read_files(void)
{
    change c;
    sw_system_use(NULL);
    for (int i = 0; i < FILES; i++) {
        char *error = NULL;
        c.texts[i] = old_bytes[i] == NULL ? sw_text_new(names[i]) : sw_text_read(names[i], &error);
        assert_non_null(c.texts[i]);
        c.writes[i] = (sw_write){c.texts[i], sw_slice_of(new_bytes[i])};
    }
    return c;
}

static void free_change(change *c)
{
    for (int i = 0; i < FILES; i++) {
        sw_text_free(c->texts[i]);
    }
}

typedef struct state_of_files {
    int old;
    int new;
    int torn;
    int temporary;
} state_of_files;

/* Files in the three folders that nobody asked for. */
static int count_temporary_files(void)
{
    static const char *const folders[] = {".", "parts", "hidden"};
    int count = 0;
    for (size_t i = 0; i < 3; i++) {
        DIR *stream = opendir(folders[i]);
        assert_non_null(stream);
        for (struct dirent *entry; (entry = readdir(stream)) != NULL;) {
            count += strstr(entry->d_name, ".stavewright-") != NULL ? 1 : 0; /* the journal, too */
        }
        closedir(stream);
    }
    return count;
}

static state_of_files look(void)
{
    state_of_files s = {.temporary = count_temporary_files()};
    for (int i = 0; i < FILES; i++) {
        const char *bytes = get_file(real_names[i]);
        bool is_old =
            bytes == NULL ? old_bytes[i] == NULL : old_bytes[i] != NULL && strcmp(bytes, old_bytes[i]) == 0;
        bool is_new = bytes != NULL && strcmp(bytes, new_bytes[i]) == 0;
        *(is_old ? &s.old : is_new ? &s.new : &s.torn) += 1;
    }
    return s;
}

static int count_open_files(void)
{
    int count = 0;
    for (int fd = 0; fd < 256; fd++) {
        count += fcntl(fd, F_GETFD) >= 0 ? 1 : 0;
    }
    return count;
}

/* Writes one file that exists; expects success or a message that contains `reason`. */
static void write_one(const char *name, const char *before, const char *after, const char *reason)
{
    sw_text *text = before == NULL ? sw_text_new(name) : sw_text_from_bytes(name, sw_slice_of(before));
    sw_write one = {text, sw_slice_of(after)};
    char *error = NULL;
    bool good = sw_write_all(&one, 1, &error);
    if (good != (reason == NULL)) {
        fail_msg("%s: %s", name, good ? "was written" : error);
    }
    if (reason != NULL && (strncmp(error, name, strlen(name)) != 0 || strstr(error, reason) == NULL)) {
        fail_msg("'%s' does not begin with '%s' and say '%s'", error, name, reason);
    }
    free(error);
    sw_text_free(text);
}

/* ---- the plain way
 * ------------------------------------------------------------------------------------------ */

static void all_files_are_written(void **state)
{
    (void)state;
    set_up_files();
    change c = read_files();
    char *error = NULL;
    assert_true(sw_write_all(c.writes, FILES, &error));
    assert_null(error);
    assert_int_equal(look().new, FILES);
    assert_int_equal(count_temporary_files(), 0);
    struct stat status;
    assert_int_equal(lstat("link.ly", &status), 0);
    assert_true(S_ISLNK(status.st_mode)); /* the link stays one */
    assert_true(sw_write_all(NULL, 0, &error));
    free_change(&c);
}

static void equal_bytes_are_not_written(void **state)
{
    (void)state;
    set_up_files();
    struct stat before;
    struct stat after;
    assert_int_equal(stat("one.ly", &before), 0);
    write_one("one.ly", old_bytes[0], old_bytes[0], NULL);
    assert_int_equal(stat("one.ly", &after), 0);
    assert_true(before.st_ino == after.st_ino);
}

static void permissions_are_kept(void **state)
{
    (void)state;
    static const mode_t modes[] = {0640, 0600, 0644, 0755, 0666, 0200};
    mode_t mask = umask(077);
    for (size_t i = 0; i < sizeof modes / sizeof modes[0]; i++) {
        set_up_files();
        assert_int_equal(chmod("one.ly", modes[i]), 0);
        if (access("one.ly", R_OK) != 0) {
            continue; /* only the superuser can read the last one */
        }
        write_one("one.ly", old_bytes[0], "new", NULL);
        struct stat status;
        assert_int_equal(stat("one.ly", &status), 0);
        assert_int_equal(status.st_mode & 07777, modes[i]);
        assert_string_equal(get_file("one.ly"), "new");
    }
    umask(027);
    write_one("parts/new.ly", NULL, "new", NULL);
    struct stat status;
    assert_int_equal(stat("parts/new.ly", &status), 0);
    assert_int_equal(status.st_mode & 07777, 0640); /* a new file: as the process's mask says */
    umask(mask);
}

static void owner_is_kept_where_allowed(void **state)
{
    (void)state;
    if (geteuid() != 0) {
        skip();
    }
    set_up_files();
    assert_int_equal(chown("one.ly", 1234, 5678), 0);
    assert_int_equal(chmod("one.ly", 0664), 0);
    write_one("one.ly", old_bytes[0], "new", NULL);
    struct stat status;
    assert_int_equal(stat("one.ly", &status), 0);
    assert_int_equal(status.st_uid, 1234);
    assert_int_equal(status.st_gid, 5678);
    assert_int_equal(status.st_mode & 07777, 0664);
}

/* Bytes and names are on the disk before the next step relies on them. */
static void calls_come_in_the_durable_order(void **state)
{
    (void)state;
    set_up_files();
    sw_buffer log = {0};
    use_fault(FAULT_NONE, 0, 0);
    fault.log = &log;
    write_one("one.ly", old_bytes[0], "new", NULL);
    assert_string_equal(sw_buffer_text(&log),
                        "open flock write fsync open fsync close " /* the journal's list */
                        "open write fchmod fsync close link "      /* both beside the target */
                        "open fsync close "                        /* their names */
                        "open read read close "                    /* all targets are as they were */
                        "write fsync "                             /* the journal is ready */
                        "open read read close rename "             /* this one still is as it was */
                        "open fsync close "                        /* the folder */
                        "unlink unlink open fsync close "          /* the temporary files */
                        "unlink close ");                          /* the journal */
    sw_buffer_clear(&log);
    write_one("parts/new.ly", NULL, "new", NULL);
    assert_string_equal(sw_buffer_text(&log), "open flock write fsync open fsync close "
                                              "open write fsync close open fsync close write fsync "
                                              "link unlink open fsync close "
                                              "unlink unlink open fsync close unlink close ");
    sw_system_use(NULL);
    sw_buffer_free(&log);
}

static void long_names_are_written(void **state)
{
    (void)state;
    set_up_files();
    char name[256] = "";
    for (int i = 0; i < 83; i++) {
        strcat(name, "\xE2\x99\xAF"); /* three bytes each: 249, and the ending makes 252 */
    }
    strcat(name, ".ly");
    put_file(name, "old");
    write_one(name, "old", "new", NULL);
    assert_string_equal(get_file(name), "new");
    assert_int_equal(count_temporary_files(), 0);
}

/* ---- what must be refused
 * -------------------------------------------------------------------------------------- */

static void changed_files_are_not_overwritten(void **state)
{
    (void)state;
    set_up_files();
    change c = read_files();
    put_file("parts/two.ly", "{ dis }\r"); /* by somebody else, of the same length */
    char *error = NULL;
    assert_false(sw_write_all(c.writes, FILES, &error));
    assert_string_equal(error, "parts/two.ly: was changed by somebody else meanwhile");
    free(error);
    assert_int_equal(look().new, 0);
    assert_string_equal(get_file("parts/two.ly"), "{ dis }\r");
    assert_int_equal(count_temporary_files(), 0);
    free_change(&c);
}

static void new_files_must_not_exist(void **state)
{
    (void)state;
    set_up_files();
    write_one("one.ly", NULL, "new", "exists already");
    assert_int_equal(symlink("nowhere", "dangling.ly"), 0);
    write_one("dangling.ly", NULL, "new", "exists already");
    write_one("none/new.ly", NULL, "new", "No such file");
    write_one("one.ly/new.ly", NULL, "new", "Not a directory");
    assert_int_equal(look().old, FILES);
}

static void only_regular_files_are_written(void **state)
{
    (void)state;
    set_up_files();
    assert_int_equal(mkfifo("pipe.ly", 0600), 0);
    assert_int_equal(symlink("loop.ly", "loop.ly"), 0);
    assert_int_equal(link("one.ly", "other.ly"), 0);
    write_one("pipe.ly", "old", "new", "no regular file");
    write_one("parts", "old", "new", "no regular file");
    write_one("/dev/null", "", "new", "no regular file");
    write_one("loop.ly", "old", "new", "Too many levels");
    write_one("none.ly", "old", "new", "No such file");
    write_one("one.ly", old_bytes[0], "new", "hard links");
    assert_string_equal(get_file("one.ly"), old_bytes[0]);
    sw_text *text = sw_text_from_bytes("-", sw_slice_of("old"));
    sw_write one = {text, sw_slice_of("new")};
    char *error = NULL;
    assert_false(sw_write_all(&one, 1, &error));
    assert_non_null(strstr(error, "standard input"));
    free(error);
    sw_text_free(text);
}

static void one_file_is_not_written_twice(void **state)
{
    (void)state;
    set_up_files();
    sw_text *text = sw_text_from_bytes("hidden/three.ly", sw_slice_of(""));
    sw_text *same = sw_text_from_bytes("link.ly", sw_slice_of(""));
    sw_write twice[] = {{text, sw_slice_of("a")}, {same, sw_slice_of("b")}};
    char *error = NULL;
    assert_false(sw_write_all(twice, 2, &error));
    assert_string_equal(error, "link.ly: the same file as hidden/three.ly");
    free(error);
    assert_int_equal(look().old, FILES);
    sw_text_free(text);
    sw_text_free(same);
}

/* Runs a test in a child that is not the superuser, whom permissions do not stop; true when it passed. */
static bool passes_as_user(bool (*test)(void))
{
    run("chmod 755 '%s'", folder);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        bool lowered = geteuid() != 0 || (setgid(65534) == 0 && setuid(65534) == 0);
        _exit(lowered && test() ? 0 : 1);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    return WIFEXITED(status) && WEXITSTATUS(status) == 0;
}

static bool is_denied(const char *name, const char *before)
{
    sw_text *text = sw_text_from_bytes(name, sw_slice_of(before));
    sw_write one = {text, sw_slice_of("new")};
    char *error = NULL;
    bool denied = !sw_write_all(&one, 1, &error) && strstr(error, "Permission denied") != NULL;
    free(error);
    sw_text_free(text);
    return denied;
}

static bool two_is_refused(void)
{
    return is_denied("parts/two.ly", old_bytes[1]);
}

static bool two_is_written(void)
{
    sw_text *text = sw_text_from_bytes("parts/two.ly", sw_slice_of(old_bytes[1]));
    sw_write one = {text, sw_slice_of("new")};
    char *error = NULL;
    bool good = sw_write_all(&one, 1, &error);
    free(error);
    sw_text_free(text);
    return good;
}

static void read_only_is_respected(void **state)
{
    (void)state;
    set_up_files();
    run("chmod 666 parts/two.ly && chmod 555 parts");
    assert_true(passes_as_user(two_is_refused));
    run("chmod 444 parts/two.ly && chmod 777 parts");
    assert_true(passes_as_user(two_is_refused));
    assert_int_equal(look().old, FILES);
    assert_int_equal(count_temporary_files(), 0);
}

/* A folder in which files may be made but not listed cannot be opened, and so not be synced. */
static void folders_need_not_be_readable(void **state)
{
    (void)state;
    set_up_files();
    run("chmod 666 parts/two.ly && chmod 333 parts");
    assert_true(passes_as_user(two_is_written));
    run("chmod 777 parts");
    assert_string_equal(get_file("parts/two.ly"), "new");
    assert_int_equal(count_temporary_files(), 0);
}

/* ---- faults
 * ----------------------------------------------------------------------------------------------------- */

static void reading_may_fail(void **state)
{
    (void)state;
    set_up_files();
    int open_files = count_open_files();
    int failed = 0;
    for (int n = 1; n == 1 || fault.count >= n - 1; n++) {
        use_fault(FAULT_ONCE, n, EIO);
        char *error = NULL;
        sw_text *text = sw_text_read("one.ly", &error);
        assert_int_equal(text == NULL, error != NULL);
        if (text == NULL) {
            failed++;
            assert_non_null(strstr(error, "one.ly: cannot be "));
            assert_non_null(strstr(error, strerror(EIO)));
        } else {
            assert_string_equal(text->bytes, old_bytes[0]);
        }
        assert_int_equal(count_open_files(), open_files);
        free(error);
        sw_text_free(text);
    }
    sw_system_use(NULL);
    assert_int_equal(failed, 3); /* open and two reads; a close that fails loses nothing */
}

static void writes_may_be_short(void **state)
{
    (void)state;
    for (size_t most = 1; most < 2000; most = most * 3 + 1) {
        set_up_files();
        change c = read_files();
        use_fault(FAULT_NONE, 0, 0);
        fault.most = most;
        char *error = NULL;
        assert_true(sw_write_all(c.writes, FILES, &error));
        sw_system_use(NULL);
        assert_int_equal(look().new, FILES);
        free_change(&c);
    }
}

static void count_sentence(void *context, const char *sentence)
{
    assert_true(strlen(sentence) > 20);
    ++*(int *)context;
}

/* What the next command does: reads each file. Returns how often it said something. */
static int settle(void)
{
    int told = 0;
    sw_recovery_use(count_sentence, &told);
    for (int i = 0; i < FILES; i++) {
        char *error = NULL;
        sw_text_free(sw_text_read(names[i], &error));
        free(error);
    }
    sw_recovery_use(NULL, NULL);
    return told;
}

/* Lets the n-th call fail, for each n; returns how many there are. */
static int fail_each_call(fault_kind kind, int number)
{
    int open_files = count_open_files();
    int failed = 0;
    int cleared = 0;
    for (int n = 1;; n++) {
        set_up_files();
        change c = read_files();
        use_fault(kind, n, number);
        char *error = NULL;
        bool good = sw_write_all(c.writes, FILES, &error);
        bool reached = fault.count >= n;
        bool failed_clearing = count_temporary_files() > 0;
        sw_system_use(NULL);
        state_of_files s = look();
        if (s.torn != 0 || (good ? s.new : s.old) != FILES) {
            fail_msg("call %d fails with %d: %s; %d old, %d new, %d torn", n, number,
                     good ? "success" : error, s.old, s.new, s.torn);
        }
        if (failed_clearing) { /* the next command clears up, and changes nothing else */
            cleared++;
            settle();
            state_of_files after = look();
            if (count_temporary_files() > 0 || after.old != s.old || after.new != s.new) {
                fail_msg("call %d fails with %d: temporary files stay, or files change", n, number);
            }
        }
        assert_int_equal(good, error == NULL);
        if (number == EINTR && reached) { /* an interrupted call is made again, where it can be */
            bool again = strcmp(fault.failed, "read") == 0 || strcmp(fault.failed, "write") == 0 ||
                         strcmp(fault.failed, "fsync") == 0 || strcmp(fault.failed, "close") == 0;
            assert_true(good || !again);
        }
        if (!good && (strstr(error, strerror(number)) == NULL || strchr(error, ':') == NULL)) {
            fail_msg("call %d: '%s' does not say '%s'", n, error, strerror(number));
        }
        assert_int_equal(count_open_files(), open_files);
        failed += good ? 0 : 1;
        free(error);
        free_change(&c);
        if (!reached) {
            assert_true(good);
            printf("%d calls fail one by one with '%s': %d times nothing is written, else all; %d times the "
                   "next command clears up\n",
                   n - 1, strerror(number), failed, cleared);
            return n - 1;
        }
    }
}

/* Some file systems say only then that the bytes have not arrived. */
static void a_failing_close_stops_the_write(void **state)
{
    (void)state;
    set_up_files();
    use_fault(FAULT_ONCE, 12, EIO); /* the journal, then open write fchmod fsync close */
    write_one("one.ly", old_bytes[0], "new", "the new version cannot be written: Input/output error");
    assert_string_equal(fault.failed, "close");
    sw_system_use(NULL);
    assert_int_equal(look().old, FILES);
    assert_int_equal(count_temporary_files(), 0);
}

static void any_call_may_fail(void **state)
{
    (void)state;
    static const int numbers[] = {ENOSPC, EIO, EPERM, EINTR, EDQUOT, EROFS};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        assert_true(fail_each_call(FAULT_ONCE, numbers[i]) > 30);
    }
}

static void any_call_may_fail_without_hard_links(void **state)
{
    (void)state;
    without_links = true;
    assert_true(fail_each_call(FAULT_ONCE, EIO) > 30);
    without_links = false;
}

/* A disk that fails for good: what cannot be put back is whole, named, and its original is kept. */
static void all_calls_may_fail_from_one_on(void **state)
{
    (void)state;
    int mixed = 0;
    for (int n = 1;; n++) {
        set_up_files();
        change c = read_files();
        use_fault(FAULT_FROM, n, EIO);
        char *error = NULL;
        bool good = sw_write_all(c.writes, FILES, &error);
        bool reached = fault.count >= n;
        sw_system_use(NULL);
        state_of_files s = look();
        assert_int_equal(s.torn, 0);
        if (good) {
            assert_int_equal(s.new, FILES);
        } else if (s.new > 0) {
            mixed++;
            for (int i = 0; i < FILES; i++) {
                const char *bytes = get_file(real_names[i]);
                if (bytes == NULL || strcmp(bytes, new_bytes[i]) != 0) {
                    continue;
                }
                char sentence[300];
                snprintf(sentence, sizeof sentence,
                         old_bytes[i] == NULL ? "%s was created and cannot be removed"
                                              : "%s cannot be put back",
                         names[i]);
                const char *named = strstr(error, sentence);
                assert_non_null(named);
                if (old_bytes[i] != NULL) {
                    const char *kept = strstr(named, "kept as ") + strlen("kept as ");
                    char path[512];
                    snprintf(path, sizeof path, "%.*s", (int)strcspn(kept, ";"), kept);
                    assert_non_null(get_file(path));
                    assert_string_equal(get_file(path), old_bytes[i]);
                }
            }
        }
        /* When the disk works again, the next command ends it. It says so, unless nothing had begun: then
         * no more is left than a journal in each of the three folders. */
        bool had_begun = s.old < FILES || s.temporary > 3;
        int told = settle();
        assert_true(s.temporary == 0 ? told == 0 : told > 0 || !had_begun);
        assert_int_equal(count_temporary_files(), 0);
        state_of_files after = look();
        if ((good ? after.new : after.old) != FILES && after.new != FILES) {
            fail_msg("all calls fail from %d on: then %d old, %d new", n, after.old, after.new);
        }
        free(error);
        free_change(&c);
        if (!reached) {
            break;
        }
    }
    printf("%d times some files stayed new, each named with its original\n", mixed);
    assert_true(mixed >= 3);
}

static void replace_a_file(void)
{
    put_file("elsewhere.ly", "{ other }\n");
    assert_int_equal(rename("elsewhere.ly", "one.ly"), 0);
}

static void create_the_new_file(void)
{
    put_file("parts/new.ly", "{ other }\n");
}

/* Somebody else comes between two calls: the other bytes are lost only when they come in the two places
 * between the last look at the file and the rename. */
static void assert_other_bytes_survive(void (*meanwhile)(void), const char *name, bool never_lost)
{
    int lost = 0;
    int refused = 0;
    for (int n = 1;; n++) {
        set_up_files();
        change c = read_files();
        use_fault(FAULT_MEANWHILE, n, 0);
        fault.meanwhile = meanwhile;
        char *error = NULL;
        bool good = sw_write_all(c.writes, FILES, &error);
        bool reached = fault.count >= n;
        sw_system_use(NULL);
        if (reached) {
            bool survives = strcmp(get_file(name), "{ other }\n") == 0;
            if (!good) {
                refused++;
                assert_true(survives);
                assert_int_equal(look().new, 0);
            } else {
                lost += survives ? 0 : 1;
            }
            assert_int_equal(count_temporary_files(), 0);
        }
        free(error);
        free_change(&c);
        if (!reached) {
            break;
        }
    }
    printf("%s changed meanwhile: %d times refused, %d times lost\n", name, refused, lost);
    assert_true(refused > 10);
    assert_true(never_lost ? lost == 0 : lost <= 1);
}

static void a_change_meanwhile_is_noticed(void **state)
{
    (void)state;
    assert_other_bytes_survive(replace_a_file, "one.ly", false);
    assert_other_bytes_survive(create_the_new_file, "parts/new.ly", true);
}

/* ---- signals
 * ------------------------------------------------------------------------------------------------------ */

/* Writes in a child to which a signal comes at the n-th call. Returns its status; *reached: there was one. */
static int write_in_child(int n, int number, void (*prepare)(void))
{
    set_up_files();
    change c = read_files();
    fflush(stdout);
    pid_t child = fork();
    assert_true(child >= 0);
    if (child == 0) {
        struct rlimit none = {0, 0};
        setrlimit(RLIMIT_CORE, &none);
        if (prepare != NULL) {
            prepare();
        }
        use_fault(FAULT_RAISE, n, number);
        char *error = NULL;
        bool good = sw_write_all(c.writes, FILES, &error);
        _exit(!good ? 2 : fault.count < n ? 0 : 1);
    }
    int status;
    assert_int_equal(waitpid(child, &status, 0), child);
    free_change(&c);
    return status;
}

enum { DONE_WITHOUT_SIGNAL = 0, DONE_IN_SPITE = 1 };

static void ending_signals_leave_nothing_half_done(void **state)
{
    (void)state;
    static const int numbers[] = {SIGINT, SIGTERM, SIGHUP, SIGQUIT};
    for (size_t i = 0; i < sizeof numbers / sizeof numbers[0]; i++) {
        int undone = 0;
        int done = 0;
        for (int n = 1;; n++) {
            int status = write_in_child(n, numbers[i], NULL);
            state_of_files s = look();
            assert_int_equal(count_temporary_files(), 0);
            if (WIFEXITED(status)) {
                assert_int_equal(WEXITSTATUS(status), DONE_WITHOUT_SIGNAL);
                break;
            }
            assert_int_equal(WTERMSIG(status), numbers[i]); /* it ends the program all the same */
            if (s.old != FILES && s.new != FILES) {
                fail_msg("signal %d at call %d: %d old, %d new, %d torn", numbers[i], n, s.old, s.new,
                         s.torn);
            }
            *(s.old == FILES ? &undone : &done) += 1;
        }
        printf("%s: %d times nothing is written, %d times all\n", strsignal(numbers[i]), undone, done);
        assert_true(undone > 10 && done > 5);
    }
}

static void ignore_hangup(void)
{
    signal(SIGHUP, SIG_IGN);
}

static void ignored_signals_stop_nothing(void **state)
{
    (void)state;
    for (int n = 1;; n++) {
        int status = write_in_child(n, SIGHUP, ignore_hangup);
        assert_true(WIFEXITED(status));
        assert_int_equal(look().new, FILES);
        assert_int_equal(count_temporary_files(), 0);
        if (WEXITSTATUS(status) == DONE_WITHOUT_SIGNAL) {
            break;
        }
        assert_int_equal(WEXITSTATUS(status), DONE_IN_SPITE);
    }
}

static void limit_file_size(void)
{
    struct rlimit small = {100, 100};
    setrlimit(RLIMIT_FSIZE, &small);
}

static void a_size_limit_leaves_nothing_half_done(void **state)
{
    (void)state;
    int status = write_in_child(0, 0, limit_file_size);
    assert_true(WIFSIGNALED(status));
    assert_int_equal(WTERMSIG(status), SIGXFSZ);
    assert_int_equal(look().old, FILES);
    assert_int_equal(count_temporary_files(), 0);
}

int main(void)
{
    const struct CMUnitTest tests[] = {
        cmocka_unit_test(all_files_are_written),
        cmocka_unit_test(equal_bytes_are_not_written),
        cmocka_unit_test(permissions_are_kept),
        cmocka_unit_test(owner_is_kept_where_allowed),
        cmocka_unit_test(calls_come_in_the_durable_order),
        cmocka_unit_test(long_names_are_written),
        cmocka_unit_test(changed_files_are_not_overwritten),
        cmocka_unit_test(new_files_must_not_exist),
        cmocka_unit_test(only_regular_files_are_written),
        cmocka_unit_test(one_file_is_not_written_twice),
        cmocka_unit_test(read_only_is_respected),
        cmocka_unit_test(folders_need_not_be_readable),
        cmocka_unit_test(reading_may_fail),
        cmocka_unit_test(writes_may_be_short),
        cmocka_unit_test(a_failing_close_stops_the_write),
        cmocka_unit_test(any_call_may_fail),
        cmocka_unit_test(any_call_may_fail_without_hard_links),
        cmocka_unit_test(all_calls_may_fail_from_one_on),
        cmocka_unit_test(a_change_meanwhile_is_noticed),
        cmocka_unit_test(ending_signals_leave_nothing_half_done),
        cmocka_unit_test(ignored_signals_stop_nothing),
        cmocka_unit_test(a_size_limit_leaves_nothing_half_done),
    };
    return cmocka_run_group_tests(tests, make_folder, remove_folder);
}
