/* SPDX-License-Identifier: Apache-2.0 */
/* An ATmega328P in simavr with an element on ADC0, a key on PD2 and a listener on its UART. */
#include "board.h"

#include <math.h>
#include <simavr/avr_adc.h>
#include <simavr/avr_eeprom.h>
#include <simavr/avr_ioport.h>
#include <simavr/avr_uart.h>
#include <simavr/sim_avr.h>
#include <simavr/sim_elf.h>
#include <simavr/sim_io.h>
#include <stdbool.h>
#include <stdlib.h>
#include <string.h>

enum {
    MHZ16 = 16000000,
    SUPPLY_MV = 5000,
    KEY_PIN = 2,
    ADCL_AT = 0x78, ADCH_AT = 0x79, ADCSRA_AT = 0x7A, TIMSK1_AT = 0x6F, MCUSR_AT = 0x54,
    TCNT1L_AT = 0x84, VARIABLES_AT = 0x100, RAM = 2048,
    TURN_LEAST = 100, /* cycles */
    PAINT = 0xC5,
    REMEMBERED = 1 << 18,
    STUCK_CODE = 431
};

static const double dip_s = 0.4, key_s = 1.0, bounce_s = 0.012;
static const double low_pa = -115000, high_pa = 15000; /* of the element */
/* Between element and converter: R with C behind it; before R a resistor to ground (wiring.md). */
static const double series_ohm = 3300, to_ground_ohm = 47000, capacitor = 2.2e-6;

static avr_t *avr;
static const struct scene *scene;
static const struct outlet *outlet;
static struct seen *result;
static double begun[REMEMBERED]; /* conversions since the last start */
static double filtered_mv, filtered_t;
static bool done;
static bool went; /* the timer, a millisecond ago */

static double now(void)
{
    return (double)avr->cycle / (MHZ16 * (1 + scene->clock_off));
}

static avr_cycle_count_t cycles(double seconds)
{
    return (avr_cycle_count_t)(seconds * MHZ16 * (1 + scene->clock_off));
}

/* Uniform numbers of a linear congruence (Knuth's MMIX multiplier) that are the same everywhere. */
static double uniform(void)
{
    static uint64_t state = 20260302;
    state = state * 6364136223846793005u + 1442695040888963407u;
    return ((double)(state >> 11) + 0.5) / 9007199254740992.0;
}

static double normal(void)
{
    return sqrt(-2 * log(uniform())) * cos(2 * M_PI * uniform());
}

static bool is(enum trouble trouble)
{
    return scene->trouble == trouble && now() >= scene->at;
}

static double supply_mv(void)
{
    return is(TROUBLE_DIP) && now() < scene->at + dip_s ? scene->dip_mv : SUPPLY_MV;
}

static bool is_wire_off(void)
{
    return is(TROUBLE_WIRE_OFF) || (is(TROUBLE_LOOSE) && now() < scene->at + scene->lasts);
}

/* What the element gives, as a share of the supply, behind its R and C. */
static double signal_mv(void)
{
    double t = now();
    double share = 0.1 + 0.8 * (-1000 * pump_vacuum(&scene->pump, t) - low_pa) / (high_pa - low_pa);
    double mv = is_wire_off() ? 0 : share * supply_mv();
    double ohm = series_ohm + (is_wire_off() ? to_ground_ohm : 0);
    double keeps = exp(-(t - filtered_t) / (ohm * capacitor));
    filtered_mv = filtered_t == 0 ? mv : mv + (filtered_mv - mv) * keeps;
    filtered_t = t;
    return fmax(0, filtered_mv + scene->noise_mv * normal());
}

/*
 * The converter of the chip rounds to the nearest of 1024 steps (data sheet, "ADC characteristics":
 * the first step lies at half a code; from memory), that of simavr cuts off at 1023 steps.
 */
static double as_simavr_takes_it(double mv)
{
    double supply = supply_mv();
    return (mv * 1024 / supply + 0.5) * supply / 1023;
}

static void on_conversion(struct avr_irq_t *irq, uint32_t value, void *own)
{
    union {
        avr_adc_mux_t mux;
        uint32_t v;
    } at = {.v = value};
    (void)irq;
    (void)own;
    avr->avcc = avr->vcc = (uint32_t)supply_mv();
    if (at.mux.kind != ADC_MUX_SINGLE || at.mux.src != 0)
        return;
    if (result->conversions < REMEMBERED)
        begun[result->conversions] = now();
    result->conversions++;
    avr_irq_t *pin = avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_ADC0);
    avr_raise_irq(pin, (uint32_t)lround(as_simavr_takes_it(signal_mv())));
}

double board_conversion(uint32_t number)
{
    return number < REMEMBERED && number < result->conversions ? begun[number] : -1;
}

static void on_byte(struct avr_irq_t *irq, uint32_t value, void *own)
{
    (void)irq;
    (void)own;
    outlet->receive(outlet->own, now(), (uint8_t)value);
}

/*
 * Time passes at once; who wants it to take its time does that in pace(). Where the converter is on
 * and at rest, sleep begins a conversion, as in the chip (data sheet, "Idle mode"); simavr does not.
 */
static void on_sleep(avr_t *it, avr_cycle_count_t cycles)
{
    static const uint8_t enabled = 1 << 7, converts = 1 << 6;
    uint8_t at = it->data[ADCSRA_AT];
    (void)cycles;
    if ((at & (enabled | converts)) == enabled)
        avr_core_watch_write(it, ADCSRA_AT, at | converts);
}

/* A converter that gives one code: what its registers say is put back before each read. */
static uint8_t stuck_low(avr_t *it, avr_io_addr_t at, void *own)
{
    (void)own;
    return it->data[at] = STUCK_CODE & 0xFF;
}

static uint8_t stuck_high(avr_t *it, avr_io_addr_t at, void *own)
{
    (void)own;
    return it->data[at] = STUCK_CODE >> 8;
}

/* A conversion that is begun and never ends. */
static void begin_nothing(avr_t *it, avr_io_addr_t at, uint8_t written, void *own)
{
    (void)own;
    it->data[at] = written;
}

static void press(bool down)
{
    avr_irq_t *pin = avr_io_getirq(avr, AVR_IOCTL_IOPORT_GETIRQ('D'), KEY_PIN);
    avr_raise_irq(pin, down ? 0 : 1);
}

/* Contacts that open and close at random for a while. */
static void move_key(double t)
{
    double since = t - scene->at;
    bool down = since >= 0 && since < key_s;
    double edge = since < key_s ? since : since - key_s;
    bool bounces = since >= 0 && edge < bounce_s;
    press(bounces ? uniform() < 0.5 : down);
}

static void start_anew(uint8_t cause)
{
    avr_reset(avr);
    avr->data[MCUSR_AT] = cause;
    result->conversions = 0;
    went = false;
}

/* A start shows when the firmware sets its timer going. */
static void count_starts(void)
{
    bool goes = avr->data[TIMSK1_AT] != 0;
    if (goes && !went) {
        result->starts++;
        press(true); /* the simulated pin forgets its level with each start */
        press(false);
    }
    went = goes;
}

/* Each millisecond. */
static void make_trouble(double t)
{
    static const uint8_t external = 1 << 1, brown_out = 1 << 2;
    count_starts();
    if (scene->trouble == TROUBLE_KEY)
        move_key(t);
    if (scene->trouble == TROUBLE_NONE || t < scene->at || done)
        return;
    done = true;
    switch (scene->trouble) {
    case TROUBLE_RESET:
        start_anew(external);
        break;
    case TROUBLE_BROWN_OUT:
        start_anew(brown_out);
        break;
    case TROUBLE_STUCK:
        avr->io[AVR_DATA_TO_IO(ADCL_AT)].r.c = stuck_low;
        avr->io[AVR_DATA_TO_IO(ADCH_AT)].r.c = stuck_high;
        break;
    case TROUBLE_DEAD:
        avr->io[AVR_DATA_TO_IO(ADCSRA_AT)].w.c = begin_nothing;
        break;
    case TROUBLE_HANG:
        avr->data[TIMSK1_AT] = 0;
        break;
    default:
        break;
    }
}

/*
 * The main program asks for the time once in each of its turns. Where no variable has changed since
 * it last did, none will until the next event, and each turn takes as long as this one: those that
 * end before the event are left out.
 */
static struct {
    avr_io_read_t read;
    void *own;
    size_t length;
    uint8_t variables[RAM];
    avr_cycle_count_t asked, turn;
} idle;

static bool has_changed(const avr_t *it)
{
    const uint8_t *variables = it->data + VARIABLES_AT;
    bool changed = memcmp(idle.variables, variables, idle.length) != 0;
    memcpy(idle.variables, variables, idle.length);
    return changed;
}

static uint8_t look_at_clock(avr_t *it, avr_io_addr_t at, void *own)
{
    (void)own;
    uint8_t value = idle.read(it, at, idle.own);
    const avr_cycle_count_t turn = it->cycle - idle.asked;
    const avr_cycle_timer_slot_t *event = it->cycle_timers.timer;
    if (turn < TURN_LEAST)
        return value; /* it asks twice when the timer has just begun anew */
    bool quiet = !has_changed(it) && it->interrupt_state == 0 && !avr_has_pending_interrupts(it);
    if (quiet && (idle.turn == 0 || turn < idle.turn))
        idle.turn = turn; /* in a longer one there was an interrupt that has changed nothing */
    if (quiet && turn == idle.turn && event != NULL && event->when > it->cycle + turn) {
        it->cycle += (event->when - it->cycle - 1) / turn * turn;
        it->run_cycle_count = 1; /* how long it may run on without a look at the events */
    }
    idle.asked = it->cycle;
    return value;
}

static void leave_out_idle_turns(const elf_firmware_t *firmware)
{
    idle.read = avr->io[AVR_DATA_TO_IO(TCNT1L_AT)].r.c;
    idle.own = avr->io[AVR_DATA_TO_IO(TCNT1L_AT)].r.param;
    idle.length = firmware->datasize + firmware->bsssize;
    avr->io[AVR_DATA_TO_IO(TCNT1L_AT)].r.c = look_at_clock;
}

static void paint(const elf_firmware_t *firmware)
{
    unsigned first = 0x100 + firmware->datasize + firmware->bsssize;
    memset(avr->data + first, PAINT, avr->ramend + 1u - first);
}

static unsigned deepest(const elf_firmware_t *firmware)
{
    unsigned at = 0x100 + firmware->datasize + firmware->bsssize;
    while (at <= avr->ramend && avr->data[at] == PAINT)
        at++;
    return avr->ramend + 1u - at;
}

static bool load(elf_firmware_t *firmware)
{
    memset(firmware, 0, sizeof *firmware);
    if (elf_read_firmware(scene->firmware, firmware) != 0)
        return false;
    avr = avr_make_mcu_by_name("atmega328p");
    if (avr == NULL || avr_init(avr) != 0)
        return false;
    firmware->frequency = MHZ16;
    avr_load_firmware(avr, firmware);
    avr->vcc = avr->avcc = avr->aref = SUPPLY_MV;
    avr->log = LOG_ERROR;
    avr->run_cycle_limit = MHZ16; /* to the next event without a look at each instruction */
    avr->sleep = on_sleep;
    return true;
}

static bool load_memory(void)
{
    uint8_t bytes[1024];
    if (scene->memory == NULL)
        return true;
    FILE *file = fopen(scene->memory, "rb");
    if (file == NULL)
        return false;
    avr_eeprom_desc_t memory = {bytes, 0, (uint32_t)fread(bytes, 1, sizeof bytes, file)};
    fclose(file);
    avr_ioctl(avr, AVR_IOCTL_EEPROM_SET, &memory); /* 1.6 answers -1 when all is well */
    return memory.size > 0;
}

static void connect_pins(void)
{
    uint32_t flags = 0;
    avr_ioctl(avr, AVR_IOCTL_UART_SET_FLAGS('0'), &flags); /* nothing to the terminal */
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_UART_GETIRQ('0'), UART_IRQ_OUTPUT),
                            on_byte, NULL);
    avr_irq_register_notify(avr_io_getirq(avr, AVR_IOCTL_ADC_GETIRQ, ADC_IRQ_OUT_TRIGGER),
                            on_conversion, NULL);
    press(false);
}

int board_run(const struct scene *to_run, const struct outlet *to, double seconds,
              struct seen *seen)
{
    elf_firmware_t firmware;
    scene = to_run;
    outlet = to;
    result = seen;
    memset(seen, 0, sizeof *seen);
    if (!load(&firmware) || !load_memory())
        return false;
    connect_pins();
    paint(&firmware);
    leave_out_idle_turns(&firmware);
    const avr_cycle_count_t end = cycles(seconds);
    avr_cycle_count_t next = 0;
    int state = cpu_Running;
    while (avr->cycle < end && state != cpu_Done && state != cpu_Crashed) {
        if (avr->cycle >= next) {
            make_trouble(now());
            outlet->pace(now());
            next += cycles(0.001);
        }
        state = avr_run(avr);
    }
    seen->stack = deepest(&firmware);
    return state != cpu_Crashed;
}
