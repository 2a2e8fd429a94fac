package haywright.ranch;

import java.util.List;
import java.util.UUID;

/**
 * A field or meadow.
 *
 * @param boundary rings of longitude and latitude as GeoJSON (RFC 7946) writes a polygon: the outer ring first, holes
 *     after it, each ring closed
 */
public record Field(UUID id, String name, List<List<List<Double>>> boundary) {
    public Field {
        boundary = boundary.stream()
                .map(ring -> ring.stream().map(List::copyOf).toList())
                .toList();
    }
}
