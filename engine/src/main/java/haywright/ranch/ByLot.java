package haywright.ranch;

import java.util.AbstractMap;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.UUID;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * What a ranch keeps about its lots, by its own id in the order given, unmodifiable. Sorted by lot once, because every page
 * of many lots asks for each of them.
 */
final class ByLot<T> extends AbstractMap<UUID, T> {
    private final Map<UUID, T> all;
    private final Map<UUID, List<T>> ofLot = new HashMap<>();

    /** @param order of what one lot has */
    ByLot(Map<UUID, T> all, Function<T, @Nullable UUID> lot, Comparator<? super T> order) {
        this.all = Collections.unmodifiableMap(new LinkedHashMap<>(all));
        for (var each : all.values()) {
            var id = lot.apply(each);
            if (id != null) {
                ofLot.computeIfAbsent(id, l -> new ArrayList<>()).add(each);
            }
        }
        ofLot.replaceAll((id, own) -> own.stream().sorted(order).toList());
    }

    List<T> on(UUID lot) {
        return ofLot.getOrDefault(lot, List.of());
    }

    @Override
    public Set<Entry<UUID, T>> entrySet() {
        return all.entrySet();
    }

    @Override
    public @Nullable T get(Object id) {
        return all.get(id);
    }

    @Override
    public boolean containsKey(Object id) {
        return all.containsKey(id);
    }
}
