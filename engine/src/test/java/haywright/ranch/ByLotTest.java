package haywright.ranch;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.UUID;
import org.junit.jupiter.api.Test;

class ByLotTest {
    private static final UUID LOT = new UUID(1, 1);
    private static final UUID OTHER = new UUID(1, 2);

    private static final Map<UUID, String> GIVEN = given();
    private static final ByLot<String> BY_LOT = new ByLot<>(
            GIVEN, s -> s.startsWith("none") ? null : s.endsWith("!") ? OTHER : LOT, Comparator.naturalOrder());

    private static Map<UUID, String> given() {
        var given = new LinkedHashMap<UUID, String>();
        given.put(new UUID(0, 3), "b");
        given.put(new UUID(0, 1), "none");
        given.put(new UUID(0, 2), "a");
        given.put(new UUID(0, 4), "c!");
        return given;
    }

    @Test
    void itIsTheMapThatWasGivenInItsOrder() {
        assertThat(BY_LOT).isEqualTo(GIVEN).containsExactlyEntriesOf(GIVEN).hasSameHashCodeAs(GIVEN);
        assertThat(BY_LOT.get(new UUID(0, 2))).isEqualTo("a");
        assertThatThrownBy(() -> BY_LOT.put(LOT, "x")).isInstanceOf(UnsupportedOperationException.class);
        assertThatThrownBy(() -> BY_LOT.values().clear()).isInstanceOf(UnsupportedOperationException.class);
    }

    @Test
    void whatALotHasIsSortedOnce() {
        assertThat(BY_LOT.on(LOT)).containsExactly("a", "b").isSameAs(BY_LOT.on(LOT));
        assertThat(BY_LOT.on(OTHER)).containsExactly("c!");
        assertThat(BY_LOT.on(new UUID(9, 9))).isEmpty();
    }
}
