package haywright.forage.lab;

import java.util.List;

/** One rule of consistency: it looks at a sheet and adds what it has to say. It says nothing where figures are missing. */
@FunctionalInterface
interface Rule {
    void look(Sheet sheet, List<Issue> issues);
}
