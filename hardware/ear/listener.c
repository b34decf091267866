/*
 * Hears phrases: a small frame around libpocketsphinx, which no shipped command keeps warm with three searches.
 *
 * The same sound goes through three searches at once: the commands that may be heard now, a loop of everyday words,
 * and a loop of bare phones. The two loops tell how much better the sound is explained by something else.
 *
 * In, on stdin: messages of one letter, four bytes of length (little endian) and that many bytes.
 *   W  words with their phones, one pair a line        G  the commands, as JSGF      R  the rivals, as JSGF
 *   U  an utterance begins                             A  16 kHz mono s16le samples  P  what is it so far?
 *   E  it has ended                                    K  it was a voice: keep what it taught of the microphone
 *   V  hear the last utterance again by this JSGF, made of words of the commands
 * Out, on stdout: one line of JSON for each G, R, P, E and V. Ends with stdin, and on a message it does not know.
 */
#include <pocketsphinx.h>
#include <sphinxbase/ckd_alloc.h>
#include <sphinxbase/cmn.h>
#include <sphinxbase/err.h>
#include <sphinxbase/feat.h>
#include <stdint.h>
#include <stdio.h>
#include <stdlib.h>
#include <string.h>

#define MAX_MESSAGE (1u << 20)
#define RIVAL_HMMS 800
#define MAX_FEATURES 64
/* Ten seconds: longer than any phrase. */
#define MAX_SAMPLES 160000

enum { COMMANDS, RIVALS, PHONES, SEARCHES };

static const char *const NAMES[SEARCHES] = {"commands", "rivals", "phones"};
static ps_decoder_t *decoders[SEARCHES];
static int ready[SEARCHES];
/* The mean of the features that every utterance begins with; a bang must not teach it what a voice is like. */
static mfcc_t voice[MAX_FEATURES];

/* A search whose path came to no end of its grammar is told by where it stood just before. */
static char *before_end[SEARCHES];

/* Frames are told from the beginning of the utterance: a decoder counts them on, through second hearings too. */
static int write_path(int which, FILE *out)
{
    int32 score = 0;
    int first = -1;
    if (!ready[which] || ps_get_hyp(decoders[which], &score) == NULL)
        return 0;
    const char *separator = "";
    fprintf(out, "[");
    for (ps_seg_t *part = ps_seg_iter(decoders[which]); part != NULL; part = ps_seg_next(part)) {
        int from, to;
        int32 acoustic, language, back;
        ps_seg_frames(part, &from, &to);
        if (first < 0)
            first = from;
        ps_seg_prob(part, &acoustic, &language, &back);
        /* Words are letters, digits, brackets and apostrophes: checked on the way in, so nothing needs escaping. */
        fprintf(out, "%s[\"%s\",%d,%d,%d]", separator, ps_seg_word(part), from - first, to - first,
                acoustic);
        separator = ",";
    }
    fprintf(out, "]");
    return 1;
}

static void keep_path(int which)
{
    size_t size;
    FILE *out = open_memstream(&before_end[which], &size);
    if (out == NULL)
        return;
    write_path(which, out);
    fclose(out);
}

/* The sound of the last utterance, for a second hearing. */
static int16 sound[MAX_SAMPLES];
static size_t sounding;

static void hear(const int16 *samples, size_t count)
{
    for (int i = 0; i < SEARCHES; i++)
        if (ready[i])
            ps_process_raw(decoders[i], samples, count, FALSE, FALSE);
    if (count > MAX_SAMPLES - sounding)
        count = MAX_SAMPLES - sounding;
    memcpy(sound + sounding, samples, count * sizeof *samples);
    sounding += count;
}

static void tell_path(int which)
{
    printf(",\"%s\":", NAMES[which]);
    if (!write_path(which, stdout))
        printf("%s", before_end[which] != NULL && *before_end[which] != 0 ? before_end[which] : "null");
    free(before_end[which]);
    before_end[which] = NULL;
}

static void tell_paths(const char *kind, int from, int to)
{
    printf("{\"kind\":\"%s\",\"frames\":%d", kind, ps_get_n_frames(decoders[COMMANDS]));
    for (int i = from; i <= to; i++)
        tell_path(i);
    printf("}\n");
    fflush(stdout);
}

static void learn_words(char *lines)
{
    for (char *line = strtok(lines, "\n"); line != NULL; line = strtok(NULL, "\n")) {
        char *phones = strchr(line, ' ');
        if (phones == NULL)
            continue;
        *phones++ = 0;
        for (int i = COMMANDS; i <= RIVALS; i++) {
            char *known = ps_lookup_word(decoders[i], line);
            if (known == NULL)
                ps_add_word(decoders[i], line, phones, FALSE);
            ckd_free(known);
        }
    }
}

static void use_grammar(int which, const char *jsgf)
{
    ready[which] = ps_set_jsgf_string(decoders[which], NAMES[which], jsgf) == 0 &&
                   ps_set_search(decoders[which], NAMES[which]) == 0;
    printf("{\"kind\":\"grammar\",\"of\":\"%s\",\"ok\":%s}\n", NAMES[which], ready[which] ? "true" : "false");
    fflush(stdout);
}

static cmn_t *mean_of(int which)
{
    return ps_get_feat(decoders[which])->cmn_struct;
}

/* The commands' own decoder hears it again, so that both scores are of the same words in the same features. */
static void hear_again(const char *jsgf)
{
    ps_decoder_t *decoder = decoders[COMMANDS];
    int found = ps_set_jsgf_string(decoder, "again", jsgf) == 0 && ps_set_search(decoder, "again") == 0;
    if (found) {
        cmn_live_set(mean_of(COMMANDS), voice);
        found = ps_start_utt(decoder) == 0 && ps_process_raw(decoder, sound, sounding, FALSE, FALSE) >= 0 &&
                ps_end_utt(decoder) == 0;
    }
    printf("{\"kind\":\"again\",\"ok\":%s,\"path\":", found ? "true" : "false");
    if (!found || !write_path(COMMANDS, stdout))
        printf("null");
    printf("}\n");
    fflush(stdout);
    if (ready[COMMANDS])
        ps_set_search(decoder, NAMES[COMMANDS]);
}

static void begin(void)
{
    sounding = 0;
    for (int i = 0; i < SEARCHES; i++) {
        cmn_live_set(mean_of(i), voice);
        if (ready[i])
            ps_start_utt(decoders[i]);
    }
}

static int open_decoders(int argc, char **argv)
{
    for (int i = 0; i < SEARCHES; i++) {
        cmd_ln_t *config = cmd_ln_parse_r(NULL, ps_args(), argc, argv, TRUE);
        if (config == NULL)
            return 0;
        /* A loop of hundreds of words tries everything at once: it is the dear one, and may be a little wrong. */
        if (i == RIVALS)
            cmd_ln_set_int_r(config, "-maxhmmpf", RIVAL_HMMS);
        decoders[i] = ps_init(config);
        if (decoders[i] == NULL)
            return 0;
    }
    if (mean_of(COMMANDS)->veclen > MAX_FEATURES)
        return 0;
    cmn_live_get(mean_of(COMMANDS), voice);
    ready[PHONES] = ps_set_allphone_file(decoders[PHONES], NAMES[PHONES], NULL) == 0 &&
                    ps_set_search(decoders[PHONES], NAMES[PHONES]) == 0;
    return ready[PHONES];
}

int main(int argc, char **argv)
{
    static char payload[MAX_MESSAGE + 1];
    unsigned char head[5];
    int in_utterance = 0;

    err_set_logfp(getenv("BYRESIDE_EAR_LOUD") != NULL ? stderr : NULL);
    if (!open_decoders(argc, argv))
        return 2;
    printf("{\"kind\":\"ready\"}\n");
    fflush(stdout);
    while (fread(head, 1, sizeof head, stdin) == sizeof head) {
        uint32_t size = head[1] | head[2] << 8 | head[3] << 16 | (uint32_t)head[4] << 24;
        if (size > MAX_MESSAGE)
            return 3;
        if (fread(payload, 1, size, stdin) != size)
            return 0;
        payload[size] = 0;
        if (in_utterance && strchr("WGRUKV", head[0]) != NULL)
            return 4;
        if (!in_utterance && strchr("APE", head[0]) != NULL)
            return 5;
        switch (head[0]) {
        case 'W':
            learn_words(payload);
            break;
        case 'G':
            use_grammar(COMMANDS, payload);
            break;
        case 'R':
            use_grammar(RIVALS, payload);
            break;
        case 'U':
            begin();
            in_utterance = 1;
            break;
        case 'A':
            hear((const int16 *)payload, size / 2);
            break;
        case 'P':
            tell_paths("so-far", COMMANDS, COMMANDS);
            break;
        case 'E':
            for (int i = 0; i < SEARCHES; i++)
                if (ready[i]) {
                    keep_path(i);
                    ps_end_utt(decoders[i]);
                }
            in_utterance = 0;
            tell_paths("ended", COMMANDS, PHONES);
            break;
        case 'V':
            hear_again(payload);
            break;
        case 'K':
            cmn_live_get(mean_of(COMMANDS), voice);
            break;
        default:
            return 6;
        }
    }
    return 0;
}
