package haywright.app.words;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class LettersTest {
    @Test
    void aTerminalGetsNoOrders() {
        assertThat(Letters.inOneLine("a\u001b[31mb\nc\u009bd\u202ee"))
                .isEqualTo("a<U+001B>[31mb<U+000A>c<U+009B>d<U+202E>e");
        assertThat(Letters.inOneLine("漢 Śląsk 😀")).isEqualTo("漢 Śląsk 😀");
    }

    @Test
    void aSoftBreakIsABreakOrABlank() {
        assertThat(Letters.withBreaks("North\u000bpivot")).isEqualTo("North pivot");
        assertThat(Letters.withBreaks("a\u000bb\fc\nd")).isEqualTo("a\nb\nc\nd");
    }

    @Test
    void whatCannotBeSeenIsNothing() {
        assertThat(Letters.isSeen("\u200b\u2060 \u00a0\ufeff")).isFalse();
        assertThat(Letters.isSeen("\u200bx")).isTrue();
    }
}
