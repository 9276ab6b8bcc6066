package earthing.site.file;

import java.util.ArrayDeque;
import java.util.ArrayList;
import java.util.Deque;
import java.util.Iterator;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.snakeyaml.engine.v2.api.LoadSettings;
import org.snakeyaml.engine.v2.api.lowlevel.Parse;
import org.snakeyaml.engine.v2.events.AliasEvent;
import org.snakeyaml.engine.v2.events.CollectionStartEvent;
import org.snakeyaml.engine.v2.events.DocumentStartEvent;
import org.snakeyaml.engine.v2.events.Event;
import org.snakeyaml.engine.v2.events.NodeEvent;
import org.snakeyaml.engine.v2.events.ScalarEvent;
import org.snakeyaml.engine.v2.events.SequenceStartEvent;
import org.snakeyaml.engine.v2.exceptions.Mark;
import org.snakeyaml.engine.v2.exceptions.MarkedYamlEngineException;
import org.snakeyaml.engine.v2.exceptions.YamlEngineException;

/**
 * Builds the tree of a file from the parser's events. Events are used, not the parser's own nodes, so that depth,
 * aliases and duplicate keys are in our hands before anything is expanded.
 */
final class TreeReader {

    /** The records of a site nest seven deep; anything much deeper is not a site file. */
    private static final int DEEPEST = 20;

    private final ProblemList problems;
    private final Deque<Open> open = new ArrayDeque<>();
    private @Nullable Tree root;
    private boolean complete = true;
    private boolean tabSeen;

    private TreeReader(ProblemList problems) {
        this.problems = problems;
    }

    /**
     * The tree of a file, as far as it could be read.
     *
     * @param root the tree, null for a file without content
     * @param complete false if the writing broke off, so that nothing can be said about missing keys
     */
    record Result(@Nullable Tree root, boolean complete) {}

    static Result read(String text, ProblemList problems) {
        TreeReader reader = new TreeReader(problems);
        reader.tabs(text);
        reader.events(text);
        return new Result(reader.root, reader.complete);
    }

    /** The parser's own message about a tab is about tokens; a user wants to hear "tab". */
    private void tabs(String text) {
        int lineNumber = 1;
        int start = 0;
        int tab = text.indexOf('\t');
        while (tab >= 0) {
            int end = text.indexOf('\n', start);
            while (end >= 0 && end < tab) {
                start = end + 1;
                lineNumber++;
                end = text.indexOf('\n', start);
            }
            if (text.substring(start, tab).indexOf('#') < 0) {
                problems.add(new Place(lineNumber, tab - start + 1), "", "", "there is a tab here", "spaces");
                tabSeen = true;
            }
            if (end < 0) {
                return;
            }
            tab = text.indexOf('\t', end);
        }
    }

    private void events(String text) {
        LoadSettings settings = LoadSettings.builder()
                .setUseMarks(true)
                .setCodePointLimit(SiteFile.LARGEST)
                .build();
        try {
            Iterator<Event> events = new Parse(settings).parseString(text).iterator();
            boolean documentSeen = false;
            while (events.hasNext()) {
                Event event = events.next();
                if (event instanceof DocumentStartEvent) {
                    if (documentSeen) {
                        problems.add(place(event.getStartMark()), "a second document starts here; a site file is one");
                        complete = false;
                        break;
                    }
                    documentSeen = true;
                }
                if (!take(event)) {
                    complete = false;
                    break;
                }
            }
        } catch (MarkedYamlEngineException e) {
            complete = false;
            broken(place(e.getProblemMark().or(e::getContextMark)), e.getProblem());
        } catch (YamlEngineException e) {
            complete = false;
            problems.add(
                    Place.WHOLE_FILE,
                    "this is not YAML: " + String.valueOf(e.getMessage()).strip());
        }
        while (!open.isEmpty()) {
            close();
        }
    }

    private void broken(Place place, String problem) {
        // Where there are tabs, they are the reason, and they have been told.
        if (!tabSeen) {
            problems.add(place, "this is not YAML: " + problem.strip());
        }
    }

    /** Returns false if reading has to stop. */
    private boolean take(Event event) {
        Place place = place(event.getStartMark());
        if (event instanceof AliasEvent) {
            problems.add(place, "aliases are not used in a site file; write the value out");
            put(new Tree.Refused(place));
            return true;
        }
        if (event instanceof NodeEvent node) {
            if (node.getAnchor().isPresent()) {
                problems.add(place, "anchors are not used in a site file; write the value out where it is needed");
            }
            if (tag(node).isPresent()) {
                problems.add(place, "tags are not used in a site file; write the value as text");
            }
        }
        if (event instanceof ScalarEvent scalar) {
            put(new Tree.Scalar(scalar.getValue(), scalar.isPlain(), place));
        } else if (event instanceof CollectionStartEvent) {
            if (open.size() >= DEEPEST) {
                problems.add(place, "blocks are nested more than " + DEEPEST + " deep here");
                return false;
            }
            open.push(new Open(event instanceof SequenceStartEvent, place));
        } else if (event.getEventId() == Event.ID.MappingEnd || event.getEventId() == Event.ID.SequenceEnd) {
            close();
        }
        return true;
    }

    private static Optional<String> tag(NodeEvent node) {
        if (node instanceof ScalarEvent scalar) {
            return scalar.getTag();
        }
        return node instanceof CollectionStartEvent start ? start.getTag() : Optional.empty();
    }

    private void close() {
        Open closed = open.pop();
        put(
                closed.list
                        ? new Tree.Items(List.copyOf(closed.items), closed.place)
                        : new Tree.Pairs(List.copyOf(closed.pairs), closed.place));
    }

    private void put(Tree node) {
        Open parent = open.peek();
        if (parent == null) {
            root = node;
        } else if (parent.list) {
            parent.items.add(node);
        } else if (!parent.hasKey) {
            parent.hasKey = true;
            parent.keyPlace = node.place();
            if (node instanceof Tree.Scalar scalar) {
                parent.key = scalar.text();
            } else {
                parent.key = "";
                if (!(node instanceof Tree.Refused)) {
                    problems.add(node.place(), "a key has to be a word");
                }
            }
        } else {
            parent.pairs.add(new Tree.Pair(parent.key, parent.keyPlace, node));
            parent.hasKey = false;
        }
    }

    private static Place place(Optional<Mark> mark) {
        return mark.map(m -> new Place(m.getLine() + 1, m.getColumn() + 1)).orElse(Place.WHOLE_FILE);
    }

    /** A list or block that has been opened and not yet closed. */
    private static final class Open {
        private final boolean list;
        private final Place place;
        private final List<Tree> items = new ArrayList<>();
        private final List<Tree.Pair> pairs = new ArrayList<>();
        private String key = "";
        private Place keyPlace = Place.WHOLE_FILE;
        private boolean hasKey;

        Open(boolean list, Place place) {
            this.list = list;
            this.place = place;
        }
    }
}
