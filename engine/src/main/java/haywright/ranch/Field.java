package haywright.ranch;

import haywright.sampling.Polygon;
import java.util.UUID;

/**
 * A field or meadow.
 *
 * @param grows what grows in it, in the rancher's words; may be empty
 */
public record Field(UUID id, String name, String grows, Polygon boundary) {
    public Field {
        Names.require("name", name, "a field");
    }
}
