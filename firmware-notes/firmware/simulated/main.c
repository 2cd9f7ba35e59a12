/* SPDX-License-Identifier: Apache-2.0 */
/*
 * Runs the firmware on a simulated board with a simulated pump, and says what is true.
 *
 *   simulated FIRMWARE.elf [seconds=35] [trouble=NAME] [at=11] [lasts=0.4] [clock-off=0.01]
 *             [noise-mv=2] [dip-mv=3900] [memory=FILE] [readings=16] [first-n=N] [rest=3]
 *             capture=FILE | port=LINK
 *
 * capture: as fast as it goes, what comes over the line into a capture file with true times.
 * port: in real time, to a pseudo-terminal of that name.
 */
#define _DEFAULT_SOURCE
#include <errno.h>
#include <fcntl.h>
#include <math.h>
#include <pty.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>
#include <termios.h>
#include <time.h>
#include <unistd.h>

#include "board.h"

enum { LINE_ROOM = 512, RISE_KPA = 65 };

static const char *const troubles[] = {"none", "reset",    "brown-out", "dip",  "stuck",
                                       "dead", "wire-off", "loose",     "hang", "key"};

struct options {
    struct scene scene;
    double seconds;
    const char *capture, *port;
};

/* What has come of the line so far, and how the samples' times compare with the conversions. */
struct listener {
    FILE *capture;
    int terminal;
    char line[LINE_ROOM];
    size_t length;
    const struct scene *scene;
    unsigned lines, samples, lost, dropped;
    uint32_t next_n;
    bool has_n;
    double error_sum, error_squares, error_least, error_most;
    unsigned compared;
};

static struct listener listener;

static double middle(uint32_t n)
{
    uint32_t first = (n - listener.scene->first_n) * (uint32_t)listener.scene->readings;
    double sum = 0;
    for (int i = 0; i < listener.scene->readings; i++) {
        double began = board_conversion(first + (uint32_t)i);
        if (began < 0)
            return -1;
        sum += began;
    }
    return sum / listener.scene->readings;
}

static void compare(uint32_t n, uint32_t t)
{
    double true_us = middle(n) * 1e6 * (1 + listener.scene->clock_off);
    double error = t - true_us;
    if (true_us < 0 || fabs(error) > 1e5)
        return; /* of before a start, or of wrapped counters */
    if (listener.compared++ == 0)
        listener.error_least = listener.error_most = error;
    listener.error_sum += error;
    listener.error_squares += error * error;
    listener.error_least = fmin(listener.error_least, error);
    listener.error_most = fmax(listener.error_most, error);
}

static void take_sample(void)
{
    unsigned long n, t;
    if (sscanf(listener.line, "S,%lu,%lu,", &n, &t) != 2)
        return;
    listener.samples++;
    if (listener.has_n && (uint32_t)n - listener.next_n < 100000)
        listener.lost += (unsigned)((uint32_t)n - listener.next_n);
    listener.has_n = true;
    listener.next_n = (uint32_t)n + 1;
    compare((uint32_t)n, (uint32_t)t);
}

static void take_line(double t)
{
    listener.line[listener.length] = '\0';
    listener.lines++;
    take_sample();
    if (listener.capture == NULL)
        return;
    fprintf(listener.capture, "%.6f ", t);
    for (const char *c = listener.line; *c != '\0'; c++)
        if (*c < 0x20 || *c > 0x7E || *c == '\\')
            fprintf(listener.capture, "\\x%02X", (unsigned char)*c);
        else
            fputc(*c, listener.capture);
    fputc('\n', listener.capture);
}

static void receive(void *own, double t, uint8_t byte)
{
    (void)own;
    if (listener.terminal >= 0 && write(listener.terminal, &byte, 1) != 1)
        listener.dropped++; /* nobody reads; a real line loses it as well */
    if (byte == '\n') {
        take_line(t);
        listener.length = 0;
    } else if (listener.length < LINE_ROOM - 1) {
        listener.line[listener.length++] = (char)byte;
    }
}

static double wall(void)
{
    struct timespec time;
    clock_gettime(CLOCK_MONOTONIC, &time);
    return (double)time.tv_sec + (double)time.tv_nsec / 1e9;
}

static void at_once(double t)
{
    (void)t;
}

/*
 * How much slower than this computer's clock the board was until the inlet was opened again; 0
 * before. A simulation that is slow all along makes a slower pump for who listens; one that was
 * late for a while and caught up does not, for the board's clock was late with it.
 */
static double slowness;

static void in_real_time(double t)
{
    static double start;
    if (start == 0)
        start = wall() - t;
    double ahead = start + t - wall();
    if (ahead > 0)
        usleep((useconds_t)(ahead * 1e6));
    if (slowness == 0 && t >= listener.scene->pump.released)
        slowness = (wall() - start) / t;
}

static int open_port(const char *link)
{
    int terminal, other;
    char name[64];
    struct termios raw;
    cfmakeraw(&raw);
    if (openpty(&terminal, &other, name, NULL, NULL) != 0)
        return -1;
    tcgetattr(other, &raw);
    cfmakeraw(&raw);
    tcsetattr(other, TCSANOW, &raw);
    fcntl(terminal, F_SETFL, O_NONBLOCK);
    unlink(link);
    return symlink(name, link) == 0 ? terminal : -1; /* other stays open: no hang-up between */
}

static bool open_capture(const char *file)
{
    listener.capture = fopen(file, "w");
    if (listener.capture == NULL)
        return false;
    fputs("# thumbseal capture 1\n# started 2026-03-02T07:15:00.000Z\n# source simulated board\n",
          listener.capture);
    return true;
}

static const char *value(const char *word, const char *name)
{
    size_t length = strlen(name);
    return strncmp(word, name, length) == 0 && word[length] == '=' ? word + length + 1 : NULL;
}

static bool take_trouble(struct scene *scene, const char *name)
{
    for (size_t i = 0; i < sizeof troubles / sizeof troubles[0]; i++)
        if (strcmp(troubles[i], name) == 0) {
            scene->trouble = (enum trouble)i;
            return true;
        }
    return false;
}

/* The whole test later, or earlier, so that the pump is off for so long at first. */
static void rest_for(struct pump *pump, double seconds)
{
    double later = seconds - pump->on;
    pump->on += later;
    pump->blocked += later;
    pump->released += later;
    pump->off += later;
}

static bool take_word(struct options *options, const char *word)
{
    struct scene *scene = &options->scene;
    const char *v;
    if ((v = value(word, "seconds")) != NULL)
        options->seconds = atof(v);
    else if ((v = value(word, "trouble")) != NULL)
        return take_trouble(scene, v);
    else if ((v = value(word, "at")) != NULL)
        scene->at = atof(v);
    else if ((v = value(word, "lasts")) != NULL)
        scene->lasts = atof(v);
    else if ((v = value(word, "dip-mv")) != NULL)
        scene->dip_mv = atof(v);
    else if ((v = value(word, "clock-off")) != NULL)
        scene->clock_off = atof(v);
    else if ((v = value(word, "noise-mv")) != NULL)
        scene->noise_mv = atof(v);
    else if ((v = value(word, "memory")) != NULL)
        scene->memory = v;
    else if ((v = value(word, "readings")) != NULL)
        scene->readings = atoi(v);
    else if ((v = value(word, "first-n")) != NULL)
        scene->first_n = (uint32_t)strtoul(v, NULL, 10);
    else if ((v = value(word, "rest")) != NULL)
        rest_for(&scene->pump, atof(v));
    else if ((v = value(word, "capture")) != NULL)
        options->capture = v;
    else if ((v = value(word, "port")) != NULL)
        options->port = v;
    else
        return false;
    return true;
}

static void report(const struct scene *scene, const struct seen *seen)
{
    double mean = listener.compared == 0 ? 0 : listener.error_sum / listener.compared;
    double square = listener.compared == 0 ? 0 : listener.error_squares / listener.compared;
    printf("rise-time-s %.4f\n", pump_rise_time(&scene->pump, RISE_KPA));
    if (slowness > 0)
        printf("rise-time-here-s %.4f\n", pump_rise_time(&scene->pump, RISE_KPA) * slowness);
    printf("maximum-vacuum-kpa %.4f\n", pump_maximum(&scene->pump));
    printf("open-vacuum-kpa %.4f\n", scene->pump.open);
    printf("lines %u\nsamples %u\nlost %u\nbytes-dropped %u\n", listener.lines, listener.samples,
           listener.lost, listener.dropped);
    printf("time-error-us mean %.1f deviation %.1f least %.1f most %.1f of %u\n", mean,
           sqrt(fmax(0, square - mean * mean)), listener.error_least, listener.error_most,
           listener.compared);
    printf("stack-bytes %u\nstarts %u\n", seen->stack, seen->starts);
}

int main(int count, char **words)
{
    struct options options = {.scene = {.pump = usual_pump, .at = 11, .lasts = 0.4, .dip_mv = 3900,
                                        .noise_mv = 2, .readings = 16},
                              .seconds = 35};
    struct seen seen;
    for (int i = 2; i < count; i++)
        if (!take_word(&options, words[i])) {
            fprintf(stderr, "simulated: cannot make out %s\n", words[i]);
            return 2;
        }
    if (count < 2 || (options.capture == NULL) == (options.port == NULL)) {
        fputs("simulated: FIRMWARE.elf, and one of capture=FILE and port=LINK\n", stderr);
        return 2;
    }
    options.scene.firmware = words[1];
    listener.scene = &options.scene;
    listener.terminal = options.port == NULL ? -1 : open_port(options.port);
    if (options.port != NULL ? listener.terminal < 0 : !open_capture(options.capture)) {
        fprintf(stderr, "simulated: %s: %s\n",
                options.port != NULL ? options.port : options.capture, strerror(errno));
        return 3;
    }
    struct outlet outlet = {receive, NULL, options.port == NULL ? at_once : in_real_time};
    if (!board_run(&options.scene, &outlet, options.seconds, &seen)) {
        fprintf(stderr, "simulated: %s does not run\n", words[1]);
        return 3;
    }
    if (listener.capture != NULL)
        fclose(listener.capture);
    if (options.port != NULL)
        unlink(options.port);
    report(&options.scene, &seen);
    return 0;
}
