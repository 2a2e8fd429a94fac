package haywright.diet;

import haywright.cattle.need.Need;
import haywright.quantity.Unit;
import haywright.workings.Source;
import java.util.List;

/** Makes the rows of one diet: of its feeds as they are expected, for its need. */
record Rows(List<Feed> feeds, Need need) {
    /** Of the whole diet. */
    DietRow of(String id, DietRow.Kind kind, String name, DietRow.Sense sense, Unit unit, Law law, Source source) {
        return of(new RowId.Nutrient(id), kind, name, sense, unit, law, source);
    }

    DietRow of(RowId id, DietRow.Kind kind, String name, DietRow.Sense sense, Unit unit, Law law, Source source) {
        var bottom = law.bottom();
        return new DietRow(
                id,
                kind,
                name,
                sense,
                law.asks().applyAsDouble(need),
                unit,
                law,
                feeds.stream().map(f -> law.top().of(f, f.composition())).toList(),
                bottom == null
                        ? List.of()
                        : feeds.stream().map(f -> bottom.of(f, f.composition())).toList(),
                law.beside().applyAsDouble(need),
                source);
    }
}
