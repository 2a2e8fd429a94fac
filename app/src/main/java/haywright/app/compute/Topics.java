package haywright.app.compute;

import java.util.List;

/** The table of topics. */
public final class Topics {
    public static final List<Topic<?, ?>> ALL = List.of();

    private Topics() {}
}
