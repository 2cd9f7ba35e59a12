/* SPDX-License-Identifier: Apache-2.0 */
/*
 * ATmega328P at 16 MHz with a crystal or resonator; element on ADC0, start key from PD2 to ground,
 * lines on TXD (PD1). Both may be left out.
 */
#include <avr/eeprom.h>
#include <avr/interrupt.h>
#include <avr/io.h>
#include <avr/wdt.h>
#include <stdatomic.h>
#include <stdbool.h>
#include <util/atomic.h>
#include <util/delay.h>

#include "board.h"
#include "sensor.h"
#include "settings.h"

enum {
    READING_US = 625,
    TICKS_PER_US = F_CPU / 8 / 1000000,
    READING_TICKS = READING_US * TICKS_PER_US,
    CHECK_TICKS = 440 * TICKS_PER_US,  /* the channel settles until then; over by 560 us */
    EMPTY_US = 4,                      /* the converter's capacitor of 14 pF, onto ground */
    CHECK_READINGS = 4,                /* that each known voltage is looked at; the last counts */
    ON_ELEMENT = _BV(REFS0) | 0,       /* supply for full scale, channel 0 */
    ON_REFERENCE = _BV(REFS0) | 14,    /* inner reference of 1.1 V */
    ON_GROUND = _BV(REFS0) | 15,
    UART_DIVIDER = (F_CPU + BAUD * 4) / (BAUD * 8) - 1
};

_Static_assert(READINGS * RATE_HZ == 1000000 / READING_US, "readings do not fill a sample");
_Static_assert(READINGS <= READINGS_MOST && MEAN_STEPS % READINGS == 0, "READINGS: 4, 8 or 16");
_Static_assert(LOW_PA < HIGH_PA && LOW_PA >= -SCALE_MOST_PA && HIGH_PA <= SCALE_MOST_PA
                   && HIGH_PA - LOW_PA <= SCALE_MOST_PA,
               "LOW_PA is the lower one; both within 300 kPa, and no more than that apart");
_Static_assert(LOW_SHARE >= 25 && HIGH_SHARE <= 975 && HIGH_SHARE - LOW_SHARE >= SHARES_APART,
               "LOW_SHARE and HIGH_SHARE: 25 to 975, and 750 apart or more");
_Static_assert(sizeof SENSOR_NAME - 1 <= NAME_LONGEST, "SENSOR_NAME is too long for the protocol");

static const struct product product = {
    SENSOR_NAME, FIRMWARE, {LOW_PA, HIGH_PA, LOW_SHARE, HIGH_SHARE}, RATE_HZ,
    {READINGS, READING_US}, FIRST_N, FIRST_T,
};

static struct sensor sensor;

/* Bytes on their way out. One byte of the ring stays free, to tell full from empty. */
static uint8_t ring[256];
static volatile uint8_t ring_in, ring_out;

uint8_t board_room(void)
{
    return (uint8_t)(ring_out - ring_in - 1);
}

void board_send(const char *bytes, uint8_t length)
{
    uint8_t in = ring_in;
    while (length-- > 0)
        ring[in++] = (uint8_t)*bytes++;
    atomic_signal_fence(memory_order_release); /* the bytes lie there before the interrupt is told */
    ring_in = in;
    UCSR0B |= _BV(UDRIE0);
}

ISR(USART_UDRE_vect)
{
    if (ring_out == ring_in)
        UCSR0B &= (uint8_t)~_BV(UDRIE0);
    else
        UDR0 = ring[ring_out++];
}

static volatile uint32_t slot_t = FIRST_T; /* when the present reading was begun */

uint32_t board_now(void)
{
    uint32_t t;
    uint16_t ticks;
    ATOMIC_BLOCK(ATOMIC_RESTORESTATE)
    {
        t = slot_t;
        ticks = TCNT1;
        /* The timer has begun anew, and its interrupt waits for us. */
        if (TIFR1 & _BV(OCF1A)) {
            t += READING_US;
            ticks = TCNT1;
        }
    }
    return t + ticks / TICKS_PER_US;
}

/* What the converter is at. */
static volatile enum { READING, SETTLING, CHECKING, RESTING } stage = RESTING;
static volatile uint8_t slots; /* counts readings, for the watchdog */
static uint16_t reading = READING_LOST, reference;

static bool checks_ground(void)
{
    return slots & CHECK_READINGS;
}

/*
 * Begins a reading at its time, and hands over the one before. A conversion that still runs is of
 * another time or channel: what it gives is no reading. Setting ADSC drops an end that waits.
 */
ISR(TIMER1_COMPA_vect)
{
    static bool begun;
    bool busy = ADCSRA & _BV(ADSC);
    uint16_t code = stage == RESTING ? reading : (uint16_t)READING_LOST;
    reading = READING_LOST;
    stage = busy ? RESTING : READING;
    if (!busy) {
        ADMUX = ON_ELEMENT;
        ADCSRA |= _BV(ADSC);
    }
    slot_t += READING_US;
    if (begun)
        sensor_reading(&sensor, code, !(PIND & _BV(PD2)));
    begun = true;
    slots++;
}

ISR(TIMER1_COMPB_vect)
{
    if (stage == SETTLING) {
        stage = CHECKING;
        ADCSRA |= _BV(ADSC);
    }
}

/*
 * The inner reference is of high impedance, and sinks worse than it gives: from the 4 V of an
 * element at rest it would take long. So the converter's capacitor is emptied first, as Microchip's
 * example "Measurement of Bandgap Reference Voltage" does.
 */
static void turn_to_check(void)
{
    ADMUX = ON_GROUND;
    if (checks_ground())
        return;
    _delay_us(EMPTY_US);
    ADMUX = ON_REFERENCE;
}

static void take_check(uint16_t code)
{
    if (slots % CHECK_READINGS != CHECK_READINGS - 1)
        return;
    if (checks_ground())
        sensor_checked(&sensor, reference, code);
    else
        reference = code;
}

ISR(ADC_vect)
{
    uint16_t code = ADC;
    if (stage == READING) {
        reading = code;
        turn_to_check();
        stage = SETTLING;
    } else if (stage == CHECKING) {
        take_check(code);
        ADMUX = ON_ELEMENT;
        stage = RESTING;
    }
}

static void start_clock(void)
{
    TCCR1A = 0;
    OCR1A = READING_TICKS - 1;
    OCR1B = CHECK_TICKS;
    TIMSK1 = _BV(OCIE1A) | _BV(OCIE1B);
    TCCR1B = _BV(WGM12) | _BV(CS11); /* begins anew at OCR1A; one tick is 8 cycles */
}

static void start_converter(void)
{
    ADMUX = ON_ELEMENT;
    DIDR0 = _BV(ADC0D);
    ADCSRA = _BV(ADEN) | _BV(ADIE) | _BV(ADPS2) | _BV(ADPS1) | _BV(ADPS0); /* 125 kHz */
}

static void start_uart(void)
{
    UCSR0A = _BV(U2X0);
    UBRR0 = UART_DIVIDER;
    UCSR0C = _BV(UCSZ01) | _BV(UCSZ00); /* 8N1 */
    UCSR0B = _BV(TXEN0);
}

static uint8_t why(uint8_t cause)
{
    uint8_t faults = 0;
    if (cause & _BV(WDRF))
        faults |= FAULT_WATCHDOG;
    /* At power-on the brown-out flag may stand as well, and says nothing then. */
    if (cause & _BV(BORF) && !(cause & _BV(PORF)))
        faults |= FAULT_POWER;
    return faults;
}

int main(void)
{
    uint8_t memory[TRIM_STEP + TRIM_BYTES];
    uint8_t cause = MCUSR;
    MCUSR = 0;
    wdt_enable(WDTO_250MS);
    eeprom_read_block(memory, 0, sizeof memory);
    PORTD |= _BV(PD2); /* pull-up of the key */
    sensor_start(&sensor, &product, memory, why(cause));
    start_uart();
    start_converter();
    start_clock();
    sei();
    uint8_t seen = slots;
    /* It never sleeps: idle mode begins a conversion of its own (data sheet, "Idle mode"). */
    for (;;) {
        /* A main program that runs is not enough: the readings have to go on as well. */
        if (seen != slots) {
            seen = slots;
            wdt_reset();
        }
        sensor_work(&sensor);
    }
}
