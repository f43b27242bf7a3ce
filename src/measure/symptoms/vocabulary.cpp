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
    {{Neck, Tight}, "thick neck; broad neck"},
    {{Neck, Loose}, "thin neck; slim neck; skinny neck"},
    {{Neck, High}, "short neck"},
    {{Neck, Low}, "long neck"},
    {{Back, Neck, Round}, "dowager hump; hump back; hunchback"},
    {{Front, Neck}, "throat; collarbone; collar bone; pit of neck; windpipe; front neck point"},
    {{Front, Neck, High}, "chin; up to chin; under chin; jaw"},
    {{Front, Neck, Low}, "cleavage; show cleavage; see cleavage; show chest; show much chest; show too much chest; show "
                         "too much"},
    {{Back, Neck}, "nape; back neck point"},
    {{Neck, Side}, "side neck; neck side; side of neck; side neck point"},
    {{Shoulder}, "shoulder; bra strap; strap"},
    {{Shoulder, Narrow}, "broad shoulder"},
    {{Shoulder, Wide}, "have narrow shoulder; has narrow shoulder; got narrow shoulder"},
    {{Shoulder, Seam}, "shoulder seam; shoulder line"},
    {{Shoulder, Tip},"shoulder tip; shoulder point; shoulder end; end of shoulder; tip of shoulder; outer shoulder; "
                     "shoulder bone; shoulder at end; shoulder at tip"},
    {{Shoulder, Neck}, "shoulder neck end; inner end; inner shoulder; neck end"},
    {{Tip}, "tip; end; outer end"},
    {{Neck, Side, Wide}, "strap show; bra strap show; see bra strap; bra strap visible; strap visible; strap peek"},
    {{Armhole, Tight}, "thick arm; big arm; arm thick"},
    {{Armhole}, "armhole; arm hole; armscye; scye; arm opening; armhole seam; armhole edge; arm; upper arm; bicep; "
                "sleeve hole; sleevehole; sleeve opening; armhole opening; arm hole opening; opening of armhole"},
    {{Underarm}, "underarm; under arm; armpit; arm pit; below arm; underarm point; beneath arm"},
    {{Chest}, "chest; upper chest; upper bust; high bust; breastbone; between neck and bust; between shoulder and bust; between collarbone and bust; below collarbone; under "
              "collarbone; beneath collarbone; below collar bone; under collar bone; beneath collar bone"},
    {{Chest, Full}, "pigeon chest; barrel chest"},
    {{Bust}, "bust; breast; boob; cup; bosom; bust line; bustline; bust level; bust girth"},
    {{Bust}, "fullest part; fullest point"},
    {{Bust, Full}, "busty; big chest; large chest; full chest; full bust; large bust; big bust; full breast; large breast; big breast; big boob; large boob; "
                   "large cup; big cup"},
    {{Bust, Flat}, "flat chest; small chest; no bust; no breast; no boob; small breast; small boob; small cup; flat bust; flat breast; low bust; small bust"},
    {{BustPoint}, "bust point; bust apex; apex; apices; nipple; bust dart point"},
    {{Dart, BustPoint}, "dart point; dart tip; dart end; end of dart; point of dart; tip of dart"},
    {{UnderBust}, "between waist and bust; between bust and waist; under bust; underbust; below bust; under breast; below breast; beneath bust; rib; rib cage; "
                  "ribcage; bra line; bra band; below boob"},
    {{Dart}, "dart; bust dart"},
    {{Dart, Wide}, "dart too big; dart too large; dart too deep; big dart; large dart; deep dart"},
    {{Dart, Narrow}, "dart too small; dart too shallow; small dart; shallow dart"},
    {{Dart, Wide}, "bust dart too big; bust dart too large; bust dart too deep; big bust dart; large bust dart; deep bust dart"},
    {{Dart, Narrow}, "bust dart too small; bust dart too shallow; small bust dart; shallow bust dart"},
    {{Dart, Waist, Wide}, "waist dart too big; waist dart too large; waist dart too deep; big waist dart; large waist dart; deep waist dart"},
    {{Dart, Waist, Narrow}, "waist dart too small; waist dart too shallow; small waist dart; shallow waist dart"},
    {{Dart, Shoulder, Wide}, "shoulder dart too big; shoulder dart too large; shoulder dart too deep; big shoulder dart; large shoulder dart; deep shoulder dart"},
    {{Dart, Shoulder, Narrow}, "shoulder dart too small; shoulder dart too shallow; small shoulder dart; shallow shoulder dart"},
    {{Dart, BustPoint, Close}, "dart point to middle; dart point to centre; dart point inward"},
    {{Dart, BustPoint, Apart}, "dart point to side; dart point outward"},
    {{Dart, Waist}, "waist dart"},
    {{Dart, Shoulder}, "shoulder dart"},
    {{Back, Narrow}, "broad back; have wide back; has wide back"},
    {{Back, Blades}, "shoulder blade; blade; upper back; between shoulder blade; blade bone; "
                    "between shoulder"},
    {{Waist, Tight}, "thick waist; thick middle; broad waist"},
    {{Waist, Loose}, "slim waist; tiny waist; thin waist"},
    {{Waist}, "waist; waistband; waist band; waistline; waist line; natural waist; round middle; around middle"},
    {{Waist, Seam}, "waist seam; waist edge"},
    {{Waist, High}, "long waist"},
    {{Waist, Low}, "short waist"},
    {{Front, Waist}, "belly; stomach; tummy; midriff"},
    {{Front, Waist, Full}, "belly stick out; stomach stick out; tummy stick out; big belly; big tummy; big stomach; "
                           "round belly; round tummy; round stomach"},
    {{Front, Waist, Short}, "show belly; show tummy; show stomach; see tummy; see belly; tummy show; belly show; stomach "
                            "show"},
    {{Back, Waist}, "above bum; above butt; above backside; above seat; above bottom; lower back; small of back; back of waist"},
    {{Back, Waist, Hollow}, "sway back; swayback; hollow back"},
    {{Hem}, "hem; lower edge; bottom; bottom edge; hemline"},
    {{Side}, "side; flank"},
    {{One, Side, Seam}, "left side seam; right side seam; one side seam"},
    {{Side, Seam}, "side seam; underarm seam"},
    {{Centre}, "centre; center; middle; centre line; centre seam; center seam"},
    {{Centre, Front}, "cf; between breast; between boob; between bust; between bust point; breast bone"},
    {{Centre, Back}, "cb; opening; back opening; fastening; zip; spine; back seam"},
    {{Front}, "front; before"},
    {{Back}, "back; behind; rear"},
    // Where.
    {{Seam}, "seam"},
    {{AllRound}, "all round; all around; everywhere; all way round; all way around; right round; all over; round "
                 "whole"},
    {{Across}, "across; horizontal; crosswise; level; from side to side"},
    {{Upright}, "upright; vertical; lengthwise; up and down"},
    {{Above}, "above; well above; high on; high up on"},
    {{Below}, "below; under; beneath; underneath; just under; just below; well below; well under"},
    {{One}, "one; left; right; single; lopsided; uneven; one side; left side; right side; left hand side; right hand "
            "side; other side; one only; crooked; not straight; not level; not even; not vertical; not plumb"},
    {{Tight, Centre, Back}, "not meet at back; not close at back; not do up at back; not fasten at back; not zip at back; "
                            "cannot close at back; cannot fasten at back; cannot do up at back; not meet in back; not "
                            "close in back; not meet behind; not close behind"},
    {{Buttons}, "button; button placket; placket; hook; popper; press stud"},
    {{Whole}, "in body; in torso; torso; whole; bodice; toile; garment; everything; whole thing; whole bodice; top; thing"},
    // Too little cloth.
    {{Cuts}, "cut; cut in; dig; dig in; dig into; bite; bite in; bite into; press; press on; choke; rub; chafe; "
             "strangle; pinch; grab; nip; saw; jab; hurt; scratch; throttle; cut into; hit"},
    {{Tight}, "tight; tighter; tightness; small; snug; strain; pull; pull across; drag; stretch; burst; squeeze; "
              "squash; squash flat; press flat; flatten; constrict; restrict; bind; no room; no ease; not much room; "
              "little room; not close; not meet; not button; not fasten; not zip; cannot close; cannot meet; cannot "
              "button; cannot fasten; cannot zip; cannot breathe; barely close; hardly close; barely meet; hardly "
              "meet; let out; more room; more space; more ease; need room; let; not enough; not enough room; not "
              "enough ease; skimpy; taut; too little"},
    {{Tight}, "too little room; too little space; too little cloth; too little fabric; lack room; nowhere near enough; nowhere near enough room; not nearly enough; not nearly enough room"},
    {{Tight}, "add; add width; add room; enlarge; increase; more cm; more mm; more inch; cannot pinch out; no cloth left; no fabric left; nothing left; nothing to pinch out; nothing left to pinch out; split; split open; rip; tear; slash; spread; corset; stiff; rigid; hardly pinch out; barely pinch out; cannot grab out; cannot hold "
              "out; pop; pop open; pop off; not do up; cannot do up; hard to close; hard to button; hard to zip; hard to fasten; fall out; spill; spill out; "
              "spill over; radiate; cannot fit out; hardly fit out; barely fit out"},
    {{Tight, Fold}, "drag line; dragline"},
    {{Narrow}, "narrow; widen; narrower"},
    {{Short}, "not enough length; no length; short; shorter; lengthen; let down; not long enough; more length; lack length; add length; too little "
              "length; not reach; not cover; not come down"},
    {{High}, "need scoop; trim; cut away; carve; carve out; shallow; scoop out; cut lower; cut deeper; high; higher; sit high; too far up; bring down; move down"},
    {{Rides}, "ride; ride up; rise; climb; creep; creep up; hitch; hitch up; hike up; lift; lift up; pull up; go up; "
              "come up; arch; arch up; shift up; work up; travel up; tip up; tug down; kick up; flip up; flick up"},
    // Too much cloth.
    {{Gapes}, "far from body; away from body; far from arm; away from arm; gape; gape open; stand off; stand away; stand up; stand out; stand proud; stick out; stick up; float; "
              "flap; wing; wing out; lift off; come away; away; gaposis; yawn; stand open; pop up; pop out; flare; "
              "not touch; not hug"},
    {{Loose}, "no shape; not close enough; space; ease; loose; looser; baggy; bag; bag out; slack; big; large; roomy; excess; surplus; spare; too much; much "
              "cloth; much fabric; room; too much room; bulky; take in; taken in; took in; take; pin out; pinch out; "
              "come in; empty; billow; extra; droopy; blouse; floppy; limp; pin in; bagginess; looseness; fullness; "
              "less room; less ease; less cloth; less fabric; bring in; shapeless; take out; take off; more fit; cm "
              "out; mm out; inch out; out at each"},
    {{Loose}, "remove; reduce; decrease; take away; add dart; grab out; hold out; gather out; fit out; handful; fistful; left over; leftover; cloth left; fabric left; "
              "material left; fold out; lot left; much left; still left; fist; fist in; hand in; sack; tent; swim in; drown in; pouch; "
              "cm left at; cm left in; cm left on; cm left round; cm left around; cm left across; cm left under; mm left at; "
              "mm left in; mm left round; inch left at; inch left in; inch left on; inch left round; inch left around; inch left across; inch left under"},
    {{Wide}, "wide; wider; broad; too open; far on arm; far on to arm; far onto arm"},
    {{Long}, "reduce length; remove length; excess length; surplus length; spare length; past; long; longer; take up; taken up; shorten; extra length; much length; too much length; too far down"},
    {{Low}, "show bra; see bra; low; lower; come down; go down; raise; bring up; move up; deep; deeper; sit low; hang low; bra show; "
            "bra visible"},
    {{Sags}, "sag; droop; drop; dip; hang down; drag down; collapse; slump; pool; puddle; hang"},
    {{Falls}, "fall off; slip off; drop off; hang off; slide off; fall down; slip down; off shoulder; over arm; past "
              "shoulder; fall over; fall; not stay on; not stay up"},
    {{Bubbles}, "lumpy; puffy; make point; come to point; bubble; poke; pucker; peak; pointy; balloon; puff; bulge; stick out at point; cone; stretch out; "
                "out of shape; lost shape; wavy"},
    {{Dimple}, "dimple; dent"},
    // Folds, places and figures.
    {{Fold}, "fold; wrinkle; crease; ripple; pleat; tuck; line; roll; ridge; not flat; not lie flat; not smooth; "
             "ruck; crumple; bunch; bunch up; wave; diagonal; slant; uneven cloth"},
    {{BustPoint, Long}, "near bust point; near apex; near nipple; close to bust point; close to apex; close to nipple; over "
                        "bust point; over apex"},
    {{BustPoint, Short}, "short of bust point; short of apex; short of nipple; far from bust point; far from apex; far "
                         "from nipple; away from bust point; away from apex"},
    {{Underarm, Low}, "see bra at side; show bra at side; bra show at side; bra visible at side; side of bra; side of bra show"},
    {{Whole, Short}, "tall"},
    {{Back, Reach}, "arm forward; move arm forward; reach forward; arm to front; arm in front; steering wheel"},
    {{Forward}, "slide forward; slip forward; fall forward; creep forward; forward; to front; pull to front; pull towards front; pull forward; kick forward; kick to front; roll forward; roll to front; swing forward; swing to front; run forward; lean forward; tilt forward"},
    {{Backward}, "slide back; slip back; fall back; creep back; slide backward; slip backward; fall backward; backward; to back; pull to back; pull towards back; pull backward; kick back; kick to back; roll back; roll to back; swing back; swing to back; run back; lean back; tilt back; slant back; too far "
                 "back; far back; go back; lie back; move back; behind bone; swing backward; behind shoulder"},
    {{Hollow}, "hollow; sunken; concave; caved in"},
    {{Full}, "full; fuller; larger; heavy; heavier; bigger; generous; prominent; protrude; jut out; jut"},
    {{Flat}, "flat; smaller; flatter"},
    {{Round}, "slouch; round; hump; hunched; stoop; dowager; cushion; bump; curve"},
    {{Erect}, "erect; straight; over erect; straight back; upright posture"},
    {{Sloping}, "slope; steep"},
    {{Square}, "square"},
    {{Apart}, "point outward; not close enough together; far to side; too far to side; apart; far apart; wide apart; far out; too far out; further apart; farther apart"},
    {{Close}, "point inward; close; close together; closer together; closer; together; near; nearer; far in"},
    {{Reach}, "reach; arm up; raise arm; lift arm; arm raised; arm lifted; move; move arm; movement; "
              "arm movement; hug"},
    {{Petite}, "petite; short upper body; short torso; short body; small frame; small person"},
};
// clang-format on

constexpr std::string_view kArticles[] = {
    "a",  "an",  "the",  "my",   "her",   "his",    "your",   "our",      "she", "he",  "i",
    "it", "its", "this", "that", "is",    "are",    "was",    "were",     "be",  "im",  "ive",
    "am", "you", "been", "very", "quite", "rather", "really", "slightly", "so",  "bit", "both",
};

constexpr std::string_view kEmptyWords[] = {
    "as",      "got",        "length",     "twist",      "yes",       "scoop",      "fill",
    "cross",   "grain",      "directly",   "along",      "will",      "run",        "lean",
    "swing",   "tilt",       "thread",     "mostly",     "use",       "used",       "person",
    "wear",    "worn",       "too",        "little",     "on",        "at",         "in",
    "of",      "to",         "by",         "with",       "from",      "for",        "into",
    "over",    "up",         "down",       "off",        "just",      "there",      "here",
    "when",    "where",      "while",      "cm",         "mm",        "inch",       "half",
    "quarter", "each",       "same",       "every",      "me",        "has",        "have",
    "get",     "do",         "does",       "some",       "much",      "all",        "sit",
    "lie",     "go",         "come",       "seem",       "look",      "feel",       "cloth",
    "fabric",  "centimetre", "centimeter", "towards",    "toward",    "around",     "edge",
    "point",   "girth",      "only",       "about",      "also",      "then",       "hers",
    "them",    "they",       "these",      "those",      "part",      "place",      "area",
    "body",    "after",      "through",    "between",    "against",   "if",         "far",
    "stand",   "show",       "sees",       "see",        "now",       "still",      "yet",
    "self",    "any",        "who",        "which",      "what",      "why",        "how",
    "being",   "lot",        "new",        "old",        "nearly",    "almost",     "always",
    "often",   "or",         "would",      "cannot",     "barely",    "hardly",     "like",
    "think",   "outward",    "inward",     "even",       "again",     "kind",       "sort",
    "abit",    "lil",        "kinda",      "sorta",      "um",        "way",        "give",
    "keep",    "start",      "note",       "notes",      "noted",     "material",   "hold",
    "gather",  "out",        "anything",   "adjustment", "adjust",    "alteration", "correction",
    "finish",  "stop",       "aim",        "bend",       "grainline", "balance",    "had",
    "breathe", "breath",     "two",        "finger",     "hand",      "thumb",      "wedge",
    "shape",   "smile",      "say",        "either",     "u",         "v",          "anyone",
    "stay",
};

// clang-format off
constexpr SpeechWords kSpeechWords[] = {
    {Speech::Not, "not; no; no longer; never; without; neither; nor; nothing; none; instead of; not need; not want; "
                  "not have to"},
    {Speech::Fine, "fine; ok; okay; good; great; perfect; perfectly; nice; nicely; lovely; correct; correctly; "
                   "properly; alright; all right; just right; look right; feel right; fit right; sit right; about "
                   "right; comfortable; comfortably; smooth; smoothly; well; fit; fit well; happy; spot on; as should; where should"},
    {Speech::Trouble, "not on top; not in place; not in middle; not in right place; out of place; bad; badly; poor; poorly; wrong; awful; terrible; horrible; ugly; weird; odd; funny; strange; "
                      "problem; fault; uncomfortable; uncomfortably; unable; not able; not know; not sure; not understand; not like; not only; not just"},
    {Speech::Enough, "enough"},
    {Speech::Wish, "need; need to; want; wish; prefer; should; should not; must; must not; ought; has to; have to; "
                   "make; plz; pls; please; would like; id like; could; can; bring; shift"},
    {Speech::Less, "less"},
    {Speech::More, "more"},
    {Speech::Than, "than; compared to; compared with; in comparison to"},
    {Speech::And, "and; plus; because; since"},
    {Speech::But, "but; however; although; though; whereas"},
    {Speech::Except, "except; except for; apart from"},
    {Speech::Sleeve, "sleeve; cuff; elbow; wrist; sleeve cap; sleeve head; forearm"},
    {Speech::BelowWaist, "hip; bum; butt; butts; backside; buttock; trousers; pants; skirt; leg; thigh; crotch; knee"},
};

// What an apostrophe, a past tense or a hasty pen hides.
constexpr OtherForm kOtherForms[] = {
    {"isnt", "not"},         {"arent", "not"},     {"wasnt", "not"},      {"werent", "not"},
    {"doesnt", "not"},       {"dont", "not"},      {"didnt", "not"},      {"wont", "not"},
    {"hasnt", "not"},        {"havent", "not"},    {"aint", "not"},       {"neednt", "not"},
    {"shouldnt", "should not"}, {"mustnt", "must not"}, {"cant", "cannot"}, {"couldnt", "cannot"},
    {"pinned", "pin out"}, {"tite", "tight"},   {"titer", "tighter"},
    {"lose", "loose"}, {"goes", "go"}, {"huge", "big"}, {"massive", "big"}, {"enormous", "big"},
};

constexpr std::string_view kComparatives[] = {
    "longer",  "shorter", "wider",  "narrower", "narrow", "higher",  "lower",   "tighter", "looser",
    "bigger",  "larger",  "fuller", "smaller",  "deeper", "closer",  "nearer",  "broader", "further",
    "farther", "flatter",
};

constexpr Mended kMendedSights[] = {
    {Long, Short},   {Short, Long},   {High, Low},      {Low, High},   {Wide, Narrow},
    {Narrow, Wide},  {Tight, Loose},  {Loose, Tight},   {Full, Tight}, {Flat, Loose},
    {Rides, Low},
    {Apart, Close},  {Close, Apart},  {Forward, Backward}, {Backward, Forward},
};
// clang-format on

}  // namespace

std::span<const Saying> vocabulary() { return kVocabulary; }

std::span<const std::string_view> articles() { return kArticles; }

std::span<const std::string_view> empty_words() { return kEmptyWords; }

std::span<const SpeechWords> speech_words() { return kSpeechWords; }

std::span<const std::string_view> comparatives() { return kComparatives; }

std::span<const OtherForm> other_forms() { return kOtherForms; }

std::span<const Mended> mended_sights() { return kMendedSights; }

}  // namespace blockwright
