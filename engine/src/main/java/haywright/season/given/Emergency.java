package haywright.season.given;

import haywright.quantity.Unit;
import java.nio.charset.StandardCharsets;
import java.util.UUID;

/** Hay that has to be found: from how much of it on feed did not last, and what it is called. */
public final class Emergency {
    /** kg as fed. */
    public static final double KG = Unit.TON.toBase(Facts.value("lasting_hay"));

    /** Of the feed, the same on every ranch. */
    public static final String ID = UUID.nameUUIDFromBytes("emergency hay".getBytes(StandardCharsets.UTF_8))
            .toString();

    private Emergency() {}
}
