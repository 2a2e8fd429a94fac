package haywright.app.exchange.lab;

import haywright.forage.Basis;
import org.jspecify.annotations.Nullable;

/** What a column holds whose heading nobody knows, as somebody said of it. */
public enum ColumnIs {
    AS_RECEIVED(Basis.AS_RECEIVED),
    DRY_MATTER(Basis.DRY_MATTER),
    NINETY_PCT(Basis.NINETY_PCT),
    /** Figures of the sample, whose basis is said elsewhere. */
    RESULT(null),
    /** Figures of a sample that the heading names. */
    SAMPLE(null),
    LEFT_OUT(null);

    private final @Nullable Basis basis;

    ColumnIs(@Nullable Basis basis) {
        this.basis = basis;
    }

    public @Nullable Basis basis() {
        return basis;
    }
}
