#include "vocabulary.hpp"

namespace blockwright {
namespace {

using enum Concept;

// The longest words that fit are taken: "shoulder blade" is no shoulder. Ends of words do not
// matter ("gapes", "gaping"), nor do the empty words below.
// clang-format off
constexpr Saying kVocabulary[] = {
    // Parts of the body and of the toile.
    {{Neck}, "neck; neckline; neck line; neck hole; neck edge; collar"},
    {{Front, Neck}, "throat; collarbone; collar bone; pit of neck; windpipe; front neck point"},
    {{Back, Neck}, "nape; back neck point"},
    {{Neck, Side}, "side neck; neck side; side of neck; side neck point"},
    {{Shoulder}, "shoulder"},
    {{Shoulder, Seam}, "shoulder seam; shoulder line"},
    {{Shoulder, Tip},
     "shoulder tip; shoulder point; shoulder end; end of shoulder; tip of shoulder; outer shoulder; "
     "shoulder bone; shoulder at end; shoulder at tip"},
    {{Shoulder, Neck}, "shoulder neck end; inner end; inner shoulder; neck end"},
    {{Tip}, "tip; end; outer end"},
    {{Armhole}, "armhole; arm hole; armscye; scye; arm opening; armhole seam; armhole edge; arm"},
    {{Underarm}, "underarm; under arm; armpit; arm pit; below arm; underarm point; beneath arm"},
    {{Chest}, "chest; upper chest; upper bust; high bust; breastbone"},
    {{Bust}, "bust; breast; cup; bosom; bust line; bustline; bust level; bust girth"},
    {{Bust, Full}, "full bust; large bust; big bust; full breast; large breast; big breast; large cup; big cup"},
    {{Bust, Flat}, "small breast; small cup; flat bust; flat breast; low bust; small bust"},
    {{BustPoint}, "bust point; apex; apices; nipple; bust dart point"},
    {{Dart, BustPoint}, "dart point; dart tip; dart end; end of dart; point of dart; tip of dart"},
    {{UnderBust}, "under bust; underbust; below bust; under breast; below breast; beneath bust; rib; rib cage; ribcage"},
    {{Dart}, "dart; bust dart"},
    {{Dart, Waist}, "waist dart"},
    {{Dart, Shoulder}, "shoulder dart"},
    {{Back, Blades}, "shoulder blade; blade; upper back; between shoulder blade; blade bone"},
    {{Waist}, "waist; waistline; waist line; waist seam; natural waist; waist edge"},
    {{Back, Waist}, "lower back; small of back; back of waist"},
    {{Back, Waist, Hollow}, "sway back; swayback; hollow back"},
    {{Hem}, "hem; lower edge; bottom; bottom edge; hemline"},
    {{Side}, "side; flank"},
    {{Side, Seam}, "side seam; underarm seam"},
    {{Centre}, "centre; center; middle; centre line; centre seam; center seam"},
    {{Centre, Front}, "cf; between breast; between bust; between bust point; breast bone"},
    {{Centre, Back}, "cb; opening; back opening; fastening; zip; spine; back seam"},
    {{Front}, "front; before"},
    {{Back}, "back; behind; rear"},
    // Where.
    {{Seam}, "seam"},
    {{AllRound}, "all round; all around; everywhere; all way round; all way around; right round; all over; round whole"},
    {{Across}, "across; horizontal; crosswise; level; from side to side"},
    {{Upright}, "upright; vertical; lengthwise; up and down"},
    {{Above}, "above; high on; high up on"},
    {{Below}, "below; under; beneath; underneath; just under"},
    {{One}, "one; left; right; single; lopsided; uneven; one side; one only; crooked"},
    {{Whole}, "whole; bodice; toile; garment; everything; whole thing; whole bodice; top; thing"},
    // Too little cloth.
    {{Cuts}, "cut; cut in; dig; dig in; dig into; bite; bite in; bite into; press; press on; choke; rub; chafe; "
             "strangle; pinch; nip; saw; jab; hurt; scratch; throttle; cut into"},
    {{Tight}, "tight; tighter; small; snug; strain; pull; pull across; drag; stretch; burst; squeeze; squash; "
              "constrict; bind; no room; not close; not meet; cannot close; cannot breathe; let out; more room; "
              "need room; let; not enough; not enough room; skimpy; out; taut; wont close; wont meet; doesnt close; "
              "doesnt meet; dont meet; dont close; too little"},
    {{Narrow}, "narrow; widen; narrower"},
    {{Short}, "short; shorter; lengthen; let down; not long enough; more length; lack length; add length; too little length"},
    {{High}, "high; higher; sit high; too far up"},
    {{Rides}, "ride; ride up; rise; climb; creep; creep up; hitch; hitch up; hike up; lift; lift up; pull up; go up; "
              "come up; arch; arch up; shift up; work up; travel up; tip up"},
    // Too much cloth.
    {{Gapes}, "gape; gape open; stand off; stand away; stand up; stand out; stand proud; stick out; stick up; "
              "float; flap; wing; wing out; lift off; come away; away; gaposis; yawn; stand open; pop up; pop out; flare"},
    {{Loose}, "loose; looser; baggy; bag; bag out; slack; big; large; roomy; excess; surplus; spare; too much; much cloth; "
              "much fabric; room; too much room; bulky; take in; taken in; took in; take; pin out; pinch out; come in; "
              "empty; billow; extra; droopy; blouse; floppy; limp; pin in"},
    {{Wide}, "wide; wider; broad"},
    {{Long}, "long; longer; take up; taken up; shorten; extra length; much length; too much length; too far down"},
    {{Low}, "low; lower; raise; bring up; deep; sit low; hang low"},
    {{Sags}, "sag; droop; drop; dip; hang down; drag down; collapse; slump; pool; hang"},
    {{Falls}, "fall off; slip off; drop off; hang off; slide off; fall down; slip down; off shoulder; over arm; "
              "past shoulder; fall over; fall"},
    {{Bubbles}, "bubble; poke; pucker; peak; pointy; balloon; puff; bulge; stick out at point; cone"},
    {{Dimple}, "dimple; dent"},
    // Folds, places and figures.
    {{Fold}, "fold; wrinkle; drag line; dragline; crease; ripple; pleat; tuck; line; roll; ridge; not flat; not lie flat; "
             "not smooth; ruck; crumple; bunch; bunch up; wave; diagonal; slant; uneven cloth"},
    {{Forward}, "forward; to front; swing forward; swing to front; run forward; lean forward; tilt forward"},
    {{Backward}, "backward; to back; swing back; swing to back; run back; lean back; tilt back; slant back; too far back; "
                 "far back; go back; lie back; move back; behind bone; swing backward; behind shoulder"},
    {{Hollow}, "hollow; sunken; concave; caved in"},
    {{Full}, "full; fuller; larger; heavy; heavier; bigger; generous"},
    {{Flat}, "flat; smaller; flatter"},
    {{Round}, "round; hump; hunched; stoop; dowager; cushion; bump; curve"},
    {{Erect}, "erect; straight; over erect; straight back; upright posture"},
    {{Sloping}, "slope; steep"},
    {{Square}, "square"},
    {{Apart}, "apart; far apart; wide apart; far out; too far out"},
    {{Close}, "close; close together; together; near; far in"},
    {{Reach}, "reach; arm forward; arm up; raise arm; lift arm; arm raised; arm lifted; move; move arm; movement; raise both arm; arm movement; hug"},
    {{Petite}, "petite; short upper body; short torso; short body; small frame; small person"},
};
// clang-format on

constexpr std::string_view kArticles[] = {
    "a",    "an",   "the",   "my",     "her",    "his",      "your", "our", "she",  "he",
    "i",    "it",   "its",   "this",   "that",   "is",       "are",  "was", "were", "be",
    "been", "very", "quite", "rather", "really", "slightly", "so",   "bit",
};

constexpr std::string_view kEmptyWords[] = {
    "cross",      "grain",      "directly", "along",  "will",   "wont",   "run",    "lean",
    "swing",      "tilt",       "thread",   "mostly", "use",    "used",   "person", "fit",
    "fits",       "wear",       "worn",     "too",    "little", "and",    "or",     "but",
    "on",         "at",         "in",       "of",     "to",     "by",     "with",   "from",
    "for",        "into",       "over",     "up",     "down",   "off",    "just",   "there",
    "here",       "when",       "where",    "while",  "as",     "cm",     "mm",     "inch",
    "half",       "quarter",    "both",     "each",   "same",   "every",  "me",     "has",
    "have",       "get",        "do",       "does",   "not",    "no",     "some",   "much",
    "all",        "sit",        "lie",      "go",     "come",   "need",   "want",   "should",
    "must",       "would",      "can",      "seem",   "look",   "feel",   "cloth",  "fabric",
    "centimetre", "centimeter", "towards",  "toward", "around", "edge",   "point",  "girth",
    "only",       "about",      "also",     "then",   "than",   "hers",   "them",   "they",
    "these",      "those",      "part",     "place",  "area",   "body",   "after",  "through",
    "between",    "against",    "if",       "far",    "make",   "makes",  "made",   "stand",
    "show",       "sees",       "see",      "now",    "still",  "yet",    "more",   "less",
    "self",       "any",        "who",      "which",  "what",   "why",    "how",    "being",
    "lot",        "well",       "good",     "new",    "old",    "nearly", "almost", "always",
    "often",
};

}  // namespace

std::span<const Saying> vocabulary() { return kVocabulary; }

std::span<const std::string_view> articles() { return kArticles; }

std::span<const std::string_view> empty_words() { return kEmptyWords; }

}  // namespace blockwright
