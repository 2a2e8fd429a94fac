package haywright.ranch;

import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.sampling.field.Polygon;
import haywright.workings.Names;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import java.util.UUID;

/**
 * A field or meadow.
 *
 * @param grows what grows in it, in the rancher's words; may be empty
 * @param zones parts that differ and are walked each by itself; may be empty, and need not cover the field
 */
public record Field(UUID id, String name, String grows, Polygon boundary, List<Polygon> zones) {
    public Field {
        Names.require("name", name, "a field");
        zones = List.copyOf(zones);
        if (!zones.isEmpty()) {
            lieInside(
                    FieldShape.of(boundary), zones.stream().map(FieldShape::of).toList());
        }
    }

    public FieldShape shape() {
        return FieldShape.of(boundary);
    }

    public List<FieldShape> zoneShapes() {
        return zones.stream().map(FieldShape::of).toList();
    }

    /**
     * The walk with so many stops; where it has zones one in each, and with at least two a zone as near to so many as that
     * allows.
     */
    public List<FieldWalk> walks(int stops, long seed) {
        if (zones.isEmpty()) {
            return List.of(FieldWalk.of(shape(), stops, seed));
        }
        for (int off = 0; off <= zones.size() && off < stops; off++) {
            for (int asked : new int[] {stops - off, Math.min(stops + off, FieldWalk.MOST_STOPS)}) {
                var walks = FieldWalk.ofZones(zoneShapes(), asked, seed);
                if (walks.stream().mapToInt(w -> w.stops().size()).sum() == stops) {
                    return walks;
                }
            }
        }
        return FieldWalk.ofZones(zoneShapes(), stops, seed);
    }

    public Field with(Polygon zone) {
        var more = new ArrayList<>(zones);
        more.add(zone);
        return new Field(id, name, grows, boundary, more);
    }

    public Field withoutZone(int index) {
        var left = new ArrayList<>(zones);
        left.remove(index);
        return new Field(id, name, grows, boundary, left);
    }

    /** Judged by where somebody would stand in them, so that a zone may share the field's own edge. */
    private static void lieInside(FieldShape field, List<FieldShape> zones) {
        for (int i = 0; i < zones.size(); i++) {
            for (var stop : FieldWalk.of(zones.get(i), 20, 1).stops()) {
                if (!field.contains(stop)) {
                    throw new Refused(
                            "zones",
                            "zone " + (i + 1),
                            "part of this zone is outside its field",
                            "Draw it inside the outline, or in its own field.");
                }
                for (int j = 0; j < i; j++) {
                    if (zones.get(j).contains(stop)) {
                        throw new Refused(
                                "zones",
                                "zone " + (i + 1),
                                "it overlaps zone %d, and the overlap would be walked twice".formatted(j + 1),
                                "Draw it beside, or delete the other.");
                    }
                }
            }
        }
    }
}
