package haywright.app.compute.topic;

import haywright.app.compute.shape.Key;
import haywright.quantity.Unit;
import haywright.sampling.field.FieldShape;
import haywright.sampling.field.FieldWalk;
import haywright.workings.Caution;
import haywright.workings.Refused;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** A walk across a field as GeoJSON (RFC 7946). */
final class FieldWalkTopic {
    private FieldWalkTopic() {}

    static final Topic<In, Out> TOPIC = new Topic<>(
            "field-walk",
            "A walk with stops across a field, its area, and how far the farthest point lies from a stop.",
            In.class,
            Out.class,
            """
            {"field":{"type":"Polygon","coordinates":[[[-109.5,44.5],[-109.49,44.5],[-109.49,44.504],[-109.5,44.504],\
            [-109.5,44.5]]]},"stops":15,"seed":7}""",
            FieldWalkTopic::walk);

    record PolygonIn(String type, List<List<List<Double>>> coordinates) {
        PolygonIn {
            if (!type.equals("Polygon")) {
                throw new Refused("type", type, "a field is a GeoJSON Polygon", "Send one field at a time.");
            }
        }
    }

    record In(
            PolygonIn field,

            @Key(words = "Left out, as many as are advised for the area.") @Nullable
            Integer stops,

            @Nullable Integer seed,
            @Nullable Boolean uneven) {}

    record LineString(String type, List<List<Double>> coordinates) {}

    record Out(
            LineString walk,
            LineString stops,
            @Key(Unit.METER) double length,
            @Key(Unit.METER) double farthest,

            @Key(value = Unit.METER, words = "The same for an even grid of as many stops.")
            double gridFarthest,

            @Key(value = Unit.METER, words = "Of the length, round holes or outside the field.")
            double outside,

            @Key(Unit.HECTARE) double area,
            String advice,
            int seed) {}

    private static Answer<Out> walk(In in) {
        var field = FieldShape.of(in.field.coordinates);
        double squareMeters = field.squareMeters();
        var advice = FieldWalk.advised(Unit.SQUARE_METER.to(Unit.ACRE, squareMeters), Boolean.TRUE.equals(in.uneven));
        int seed = in.seed == null ? 1 : in.seed;
        var walk = FieldWalk.of(field, in.stops == null ? advice.stops() : in.stops, seed);
        var cautions = new ArrayList<Caution>();
        if (walk.outsideMeters() > 0) {
            cautions.add(new Caution(
                    "Part of the walk goes round a hole or outside the field: go round, not through.",
                    advice.source()));
        }
        return new Answer<>(
                new Out(
                        new LineString("LineString", positions(walk.path())),
                        new LineString("MultiPoint", positions(walk.stops())),
                        walk.lengthMeters(),
                        walk.farthestMeters(),
                        walk.gridFarthestMeters(),
                        walk.outsideMeters(),
                        Unit.SQUARE_METER.to(Unit.HECTARE, squareMeters),
                        advice.why(),
                        seed),
                true,
                List.of(walk),
                cautions);
    }

    private static List<List<Double>> positions(List<FieldShape.Corner> corners) {
        return corners.stream()
                .map(FieldShape.Corner::onTheGlobe)
                .map(c -> List.of(c.longitude(), c.latitude()))
                .toList();
    }
}
